import type { What } from '@/lib/views/bottle-ledger';
import type { Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';

/** What a line of a ledger says happened, in a few words. */
export function whatText(what: What, today: Day): string {
  switch (what.kind) {
    case 'received':
      return 'Received';
    case 'drawn':
      return what.recipe === null ? 'Drawn' : `Drawn for ${what.recipe}`;
    case 'discarded':
      return 'Thrown away';
    case 'returned':
      return 'Sent back to the supplier';
    case 'reversed':
      return 'Taken back';
    case 'less':
      return 'Counted, and less was there';
    case 'more':
      return 'Counted, and more was there';
    case 'shut':
      return 'Not opened after all';
    case 'opened':
      return `Opened on ${showDay(what.on, today)}${what.was === null ? '' : `, not ${showDay(what.was, today)}`}`;
    case 'moved':
      return `Moved ${what.from === null ? '' : `from ${what.from} `}${what.to === null ? 'to nobody knows where' : `to ${what.to}`}`;
    case 'dated':
      return `Printed last day ${what.to === null ? 'taken off' : showDay(what.to, today)}${what.from === null ? '' : `, not ${showDay(what.from, today)}`}`;
  }
}
