import 'server-only';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import { Day as AnyDay } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import type { History, HistoryLine } from '../data/ledger-rows';
import { account } from '../engine/ledger/account';
import { takeBack } from '../engine/ledger/decide';
import { isOut, type Movement } from '../engine/ledger/movement';
import type { Shop } from '../engine/shop';

/** One line of a bottle's ledger, as it is shown. */
export type LedgerLine = {
  /** Counted from 1 down the page. */
  line: number;
  what: What;
  /** How much moved, whether it left the bottle, and what was in it then; null for what moved nothing. */
  moved: { amount: Stock; out: boolean; left: Stock; cost: Micros | null } | null;
  /** When it happened, as a person said; a day alone where no time was said. */
  happened: { at: Instant; dayAlone: boolean };
  recordedAt: Instant;
  actor: string;
  reason: string | null;
  /** The line that takes this one back, and the line that this one takes back. */
  takenBackBy: number | null;
  takesBack: number | null;
  /** The movement that it is, and whether it may be taken back; null for what moved nothing. */
  movement: string | null;
  reversible: boolean;
};

/** What a line says happened. */
export type What =
  | { kind: 'received' | 'discarded' | 'returned' | 'reversed' | 'less' | 'more' | 'shut' }
  | { kind: 'drawn'; recipe: string | null }
  | { kind: 'opened'; on: Day; was: Day | null }
  | { kind: 'moved'; to: string | null; from: string | null }
  | { kind: 'dated'; to: Day | null; from: Day | null };

/** The lines of a bottle's ledger in the order in which they were written, each with what it left and what it cost. */
export function ledgerLines({ lines, ledger, paid }: History, shop: Shop): LedgerLine[] {
  const { movements, size } = ledger;
  const costs = new Map(
    paid === null ? [] : account(paid, size, movements).carried.map(({ movement, cost }) => [movement.id, cost]),
  );
  const lineOf = new Map(lines.flatMap((one, at) => ('movement' in one ? [[one.movement.id, at + 1]] : [])));
  const backOf = new Map(movements.map(({ id, reverses }) => [reverses, id]));
  let left = 0;
  return lines.map((one, at): LedgerLine => {
    const { occurredAt, recordedAt, actor, reason } = one;
    const written = { line: at + 1, what: whatOf(one, shop), recordedAt, actor, reason };
    const happened = { at: occurredAt, dayAlone: saysDayAlone(one) };
    if (!('movement' in one)) return { ...written, happened, ...MOVED_NOTHING };
    const { movement } = one;
    const out = isOut(movement);
    left += out ? -movement.amount : movement.amount;
    const back = backOf.get(movement.id);
    return {
      ...written,
      happened,
      moved: { amount: movement.amount, out, left: left as Stock, cost: costs.get(movement.id) ?? null },
      takenBackBy: (back !== undefined && lineOf.get(back)) || null,
      takesBack: (movement.reverses !== null && lineOf.get(movement.reverses)) || null,
      movement: movement.id,
      reversible: takeBack(ledger, movement.id, 'asked').ok,
    };
  });
}

const MOVED_NOTHING = { moved: null, takenBackBy: null, takesBack: null, movement: null, reversible: false };

const saysDayAlone = (line: HistoryLine): boolean =>
  'movement' in line ? line.movement.kind === 'received' : line.change === 'opened' && line.reason !== DRAWN_FROM;

/** The reason that an opening carries when a draw opened the bottle. */
const DRAWN_FROM = 'drawn from';

function whatOf(line: HistoryLine, shop: Shop): What {
  if ('movement' in line) return moveOf(line.movement, recipeOf(shop, line.applicationId));
  const { change, was, is } = line;
  if (change === 'opened')
    return is === null ? { kind: 'shut' } : { kind: 'opened', on: AnyDay.parse(is), was: day(was) };
  if (change === 'moved') return { kind: 'moved', to: is, from: was };
  return change === 'dated' ? { kind: 'dated', to: day(is), from: day(was) } : { kind: 'shut' };
}

const day = (text: string | null): Day | null => (text === null ? null : AnyDay.parse(text));

const recipeOf = (shop: Shop, application: string | null): string | null =>
  shop.applications.find(({ id }) => id === application)?.recipe.name ?? null;

function moveOf({ kind, to, from }: Movement, recipe: string | null): What {
  if (kind === 'drawn') return { kind, recipe };
  if (kind === 'counted') return { kind: from === 'container' ? 'less' : 'more' };
  if (kind === 'discarded' && to === 'supplier') return { kind: 'returned' };
  return { kind };
}
