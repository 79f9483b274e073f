import type { Day } from '@/shared/time/day';
import type { Bench, Program, Recipe, Shop } from '../shop';
import { anyTurnsBetween } from './program-turns';

/** A planned spraying that was skipped, or was done on some of its benches only, with the reason that was given. */
type LeftOut = {
  program: Program;
  /** The day on which the program itself has it, and the day it was on. */
  on: Day;
  date: Day;
  recipe: Recipe;
  benches: Bench[];
  reason: string | null;
};

/** The planned sprayings between two days, both included, that were left out wholly or on some benches. The earliest first. */
export const leftOutBetween = (shop: Shop, from: Day, to: Day): LeftOut[] =>
  shop.programs
    .filter(({ changes }) => changes.some(isLeftOut))
    .flatMap((program) => leftOutOf(shop, program, from, to))
    .sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));

const isLeftOut = ({ kind, reason }: Program['changes'][number]): boolean =>
  kind === 'skipped' || (kind === 'done' && reason !== null);

function leftOutOf({ applications }: Shop, program: Program, from: Day, to: Day): LeftOut[] {
  return anyTurnsBetween(program, from, to).flatMap(({ day, index, became }) => {
    const recipe = program.recipes[index % program.recipes.length];
    if (!recipe || !became || !isLeftOut(became) || day < from || day > to) return [];
    const sprayed = applications.find(({ id }) => id === became.application)?.benches ?? [];
    const benches = program.benches.filter(({ id }) => !sprayed.some((bench) => bench.id === id));
    return benches.length === 0 ? [] : [{ program, on: became.on, date: day, recipe, benches, reason: became.reason }];
  });
}
