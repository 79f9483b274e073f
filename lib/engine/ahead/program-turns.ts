import type { Day } from '@/shared/time/day';
import { occurrences } from '@/shared/time/recurrence';
import type { Program } from '../shop';

/** One turn of a program that is still to come: the day it is on now, which occurrence it is, and when it starts. */
export type Turn = { day: Day; index: number; startMinute: number };

/**
 * The turns of a program from one day to another that are still to be sprayed: those it has by its own repeat, without
 * what is done or skipped, and with what was moved on the day it was moved to. Whose turn a recipe is goes by the
 * program's own count, so that moving or skipping one never changes another.
 *
 * Takes   the first and the last day, both included
 * Gives   them in the order of their days
 */
export function turnsBetween(program: Program, from: Day, to: Day): Turn[] {
  const { startMinute, changes } = program;
  const own = occurrences(program.repeat, program.startsOn, from, lastDay(program, to));
  if (changes.length === 0) return own.map((turn) => ({ ...turn, startMinute }));
  const changed = new Set(changes.map(({ on }) => on));
  const left = own.filter(({ day }) => !changed.has(day)).map((turn) => ({ ...turn, startMinute }));
  const moved = changes.flatMap(({ on, kind, movedTo, startMinute: at }): Turn[] => {
    if (kind !== 'moved' || movedTo === null || movedTo < from || movedTo > to) return [];
    const [turn] = occurrences(program.repeat, program.startsOn, on, lastDay(program, on));
    return turn ? [{ day: movedTo, index: turn.index, startMinute: at ?? startMinute }] : [];
  });
  return [...left, ...moved].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.index - b.index));
}

const lastDay = ({ endsOn }: Program, to: Day): Day => (endsOn !== null && endsOn < to ? endsOn : to);
