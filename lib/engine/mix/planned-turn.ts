import { type Reading, read, unreadable } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';
import { addMinutes, type Instant } from '@/shared/time/instant';
import { occurrences } from '@/shared/time/recurrence';
import { showDay } from '@/shared/time/show-day';
import { atClock } from '@/shared/time/zone';
import { openBenchesOf } from '../ahead/turns-on-record';
import type { Bench, Program, Recipe, Shop, SprayingChange } from '../shop';

/** One spraying of a program, by the day on which the program itself has it, wherever it was moved. */
export type PlannedTurn = {
  program: Program;
  on: Day;
  recipe: Recipe;
  /** The day it is on now, and which occurrence of its program it is. */
  date: Day;
  occurrence: number;
  startsAt: Instant;
  endsAt: Instant;
  /** What became of it; null: it is still to be sprayed. */
  became: 'done' | 'skipped' | null;
};

/**
 * The spraying that a program has on a day of its own.
 *
 * Refuses  a program that the shop does not have; a day on which it sprays nothing
 */
export function plannedTurn(shop: Shop, id: string, on: Day): Reading<PlannedTurn> {
  const program = shop.programs.find((one) => one.id === id);
  if (!program) return unreadable(`There is no program "${id}" in this shop.`);
  const last = program.endsOn !== null && program.endsOn < on ? program.endsOn : on;
  const [turn] = occurrences(program.repeat, program.startsOn, on, last);
  const recipe = turn && program.recipes[turn.index % program.recipes.length];
  if (!turn || !recipe) return unreadable(`This program sprays nothing on ${showDay(on)}.`);
  const change = program.changes.find((one) => one.on === on) ?? null;
  const date = change?.movedTo ?? on;
  const startsAt = atClock(shop.zone, date, change?.startMinute ?? program.startMinute);
  return read({
    ...{ program, on, recipe, date, startsAt, occurrence: turn.index },
    endsAt: addMinutes(startsAt, program.duration),
    became: becameOf(change),
  });
}

/** The benches of a turn that is done which its record does not name, and of which nobody has said anything. */
export const leftOfDone = (shop: Shop, { program, date, occurrence, became }: PlannedTurn): readonly Bench[] =>
  became === 'done' ? openBenchesOf(shop, program, date, occurrence) : [];

const becameOf = (change: SprayingChange | null): PlannedTurn['became'] =>
  change === null || change.kind === 'moved' ? null : change.kind;
