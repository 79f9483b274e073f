import type { Day } from '@/shared/time/day';
import { occurrences } from '@/shared/time/recurrence';
import type { Program, SprayingChange } from '../shop';

/** One turn of a program that is still to come: the day it is on now, which occurrence it is, and when it starts. */
export type Turn = { day: Day; index: number; startMinute: number };

/** Any turn of a program: the same, with the line that says it was done or skipped; null while nobody has said so. */
export type AnyTurn = Turn & { became: SprayingChange | null };

/**
 * The turns of a program from one day to another that are still to be sprayed: those it has by its own repeat, without
 * what is done or skipped, and with what was moved on the day it was moved to. Whose turn a recipe is goes by the
 * program's own count, so that moving or skipping one never changes another.
 *
 * Takes   the first and the last day, both included
 * Gives   them in the order of their days
 */
export const turnsBetween = (program: Program, from: Day, to: Day): Turn[] =>
  anyTurnsBetween(program, from, to)
    .filter(({ became }) => became === null)
    .map(({ day, index, startMinute }) => ({ day, index, startMinute }));

/** The same with the turns that were done or skipped. */
export function anyTurnsBetween(program: Program, from: Day, to: Day): AnyTurn[] {
  const { startMinute, changes } = program;
  const own = occurrences(program.repeat, program.startsOn, from, lastDay(program, to));
  const asPlanned = { startMinute, became: null };
  if (changes.length === 0) return own.map((turn) => ({ ...turn, ...asPlanned }));
  const changed = new Map(changes.map((change) => [change.on, change]));
  const here = own.flatMap((turn): AnyTurn[] => {
    const change = changed.get(turn.day) ?? null;
    return change?.movedTo ? [] : [{ ...turn, startMinute, became: becameOf(change) }];
  });
  const moved = changes.flatMap((change): AnyTurn[] => {
    const { on, movedTo, startMinute: at } = change;
    if (movedTo === null || movedTo < from || movedTo > to) return [];
    const [turn] = occurrences(program.repeat, program.startsOn, on, lastDay(program, on));
    return turn ? [{ day: movedTo, index: turn.index, startMinute: at ?? startMinute, became: becameOf(change) }] : [];
  });
  return [...here, ...moved].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.index - b.index));
}

const becameOf = (change: SprayingChange | null): SprayingChange | null => (change?.kind === 'moved' ? null : change);

const lastDay = ({ endsOn }: Program, to: Day): Day => (endsOn !== null && endsOn < to ? endsOn : to);

/** The day on which a program itself has the spraying that it sprays on another, or on the same. */
export function ownDay({ changes, repeat, startsOn }: Program, date: Day, occurrence: number): Day {
  const moved = changes.find(
    ({ movedTo, on }) => movedTo === date && occurrences(repeat, startsOn, on, on)[0]?.index === occurrence,
  );
  return moved?.on ?? date;
}
