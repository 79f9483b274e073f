import { withoutInterval } from '../keepout/reopening';
import type { Bench } from '../shop';
import type { Flag } from './flag';
import { benchNames, listed, momentNear, untilNear } from './in-words';
import { flagSpraying } from './raise';
import { benchMemory, type Turn, turnsOf } from './turns';
import type { Unflagged } from './unflagged';

/**
 * Somebody would have to go to a bench that is still closed.
 *
 * Looks at  each bench by itself: every application on record and planned spraying that starts before this one
 * Fires     when the spraying starts before one of them reopens the bench; one that nobody can say the end of, because its
 *           interval or its end is unknown, never reopens it. Once for a spraying, with every bench concerned. At the very
 *           moment of reopening the bench is no longer closed.
 * Severity  stop
 * Cleared   by starting when the bench has reopened, by moving the earlier one, or by entering what is unknown
 */
export function benchClosed(plan: Unflagged, turns: Turn[] = turnsOf(plan)): Flag[] {
  const closedBy = benchMemory((): Closed => ({ known: null, unknown: null }));
  const flags: Flag[] = [];
  for (const turn of turns) {
    const stillClosed: Meeting[] = [];
    for (const spot of turn.spots) {
      const closed = closedBy(spot);
      const by = closerAt(closed, turn);
      if (by) stillClosed.push({ bench: spot.bench, by });
      remember(closed, turn);
    }
    if (!turn.planned || stillClosed.length === 0) continue;
    const about = { rule: 'bench-closed', severity: 'stop', product: null } as const;
    const benches = stillClosed.map(({ bench }) => bench);
    flags.push(flagSpraying(turn.planned, { ...about, benches }, () => messageFor(plan, turn, stillClosed)));
  }
  return flags;
}

/** What closes a bench: the turn that reopens it last, and one that nobody can say the end of. */
type Closed = { known: Turn | null; unknown: Turn | null };
type Meeting = { bench: Bench; by: Turn };

function closerAt({ known, unknown }: Closed, { startsAt }: Turn): Turn | null {
  if (unknown) return unknown;
  return known?.reopensAt != null && startsAt < known.reopensAt ? known : null;
}

function remember(closed: Closed, turn: Turn): void {
  if (turn.reopensAt === null) closed.unknown ??= turn;
  else if (closed.known?.reopensAt == null || turn.reopensAt > closed.known.reopensAt) closed.known = turn;
}

function messageFor(plan: Unflagged, turn: Turn, meetings: Meeting[]): string {
  const closers = [...new Set(meetings.map(({ by }) => by))];
  return closers
    .map((by) =>
      closerInWords(plan, turn, by, benchNames(meetings.filter((one) => one.by === by).map(({ bench }) => bench))),
    )
    .join(' ');
}

function closerInWords(plan: Unflagged, turn: Turn, by: Turn, where: string): string {
  const what = `${by.recipe.name}, ${by.planned ? 'planned' : 'sprayed'} there ${momentNear(plan, by.startsAt)}`;
  if (by.reopensAt === null) {
    return `After ${what}, nobody can say when people may enter ${where} again, so it stays closed. ${toEnter(by)}`;
  }
  const reopens = untilNear(plan, by.reopensAt);
  return `After ${what}, nobody enters ${where} until ${reopens}, and this starts ${momentNear(plan, turn.startsAt)}. Start this ${reopens} or later, or move the other one.`;
}

function toEnter({ recipe, planned }: Turn): string {
  const unknown = withoutInterval(recipe);
  if (unknown.length > 0) {
    return `Enter the restricted-entry interval of ${listed(unknown.map(({ name }) => name))} from its label.`;
  }
  return planned ? 'Enter when it ends.' : 'Note when that application ended.';
}
