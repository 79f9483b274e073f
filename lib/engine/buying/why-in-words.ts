import { showMoney, showRough } from '@/shared/measure/show';
import type { Day } from '@/shared/time/day';
import { showDayLong } from '@/shared/time/show-day';
import { counted, listed } from '../rules/in-words';
import type { Offer } from '../shop';
import type { ExplainedLine, Reason } from './why';

/**
 * One sentence for a reason: "The 1 gal of Hollow Supply is cheaper per mL, but 61 % of it would die on 4 August."
 *
 * Takes   the line it is about, and today, so that a day of another year is told with its year
 */
export function whyInWords({ order, line }: ExplainedLine, reason: Reason, today: Day, currency: string): string {
  const day = (on: Day) => showDayLong(on, today);
  const per = line.offer.product.form === 'liquid' ? 'mL' : 'g';
  switch (reason.kind) {
    case 'nothing else is offered':
      return 'It is the only pack that is offered.';
    case 'other dies':
      return `${named(reason.other)} is cheaper per ${per}, but ${percent(reason.part)} of it would die on ${day(reason.on)}.`;
    case 'other is too much':
      return `${named(reason.other)} is cheaper per ${per}, but ${percent(reason.part)} of it would not be used before it dies.`;
    case 'other is dearer':
      return reason.times === 1
        ? `${named(reason.other)} costs as much per ${per}.`
        : `${named(reason.other)} costs ${showRough(reason.times)} times as much per ${per}.`;
    case 'other is too late':
      return `${named(reason.other)} would not be here in time for ${day(reason.on)}.`;
    case 'other costs more in all':
      return `${named(reason.other)} is cheaper per ${per}, but costs more once its orders are paid.`;
    case 'price by quantity':
      return `From ${reason.atLeast} packs on each costs less.`;
    case 'shares an order':
      return `It could wait until ${day(reason.latestOn)}, but comes in one order with ${listed(reason.with.map(({ name }) => name))}.`;
    case 'freight becomes free':
      return `With it the order is worth ${showMoney(order.supplier.freeFreightOver ?? 0, currency)}, and its freight is free.`;
    case 'minimum is reached':
      return `With it the order reaches the ${showMoney(order.supplier.minimumOrder ?? 0, currency)} that ${order.supplier.name} asks for.`;
    case 'is late':
      return `It is needed on ${day(reason.neededOn)}, which no order reaches any more: order it today.`;
    case 'stays shut':
      return `${counted(reason.count, 'pack')} would still be shut at the end of these weeks.`;
  }
}

const named = ({ packText, supplier }: Offer): string => `The ${packText} of ${supplier.name}`;

const percent = (part: number): string => `${showRough(part * 100)} %`;
