import type { ShopFile } from '@/shared/shop-file/contract';
import { daysOf, instantAt, minutesOf } from './calendar';
import { decimal, type Fraction, fraction, isLess, minus, over, plus, rounded, roundedUp, times } from './fraction';
import { perLitre, volumeOf } from './measures';
import { micros } from './shelf';

/* What is to be sprayed, day by day: when, where, and how much of what. */

type Program = ShopFile['programs'][number];
export type Recipe = ShopFile['recipes'][number];
export type Product = ShopFile['products'][number];
export type Bench = ShopFile['benches'][number];
type Line = { product: Product; ingredient: Recipe['ingredients'][number]; amount: bigint | null };

export type Turn = {
  program: Program;
  recipe: Recipe;
  benches: Bench[];
  date: string;
  startsAt: number;
  endsAt: number;
  /** Null when the longest interval of the mix is unknown. */
  reopensAt: number | null;
  plants: number;
  /** Null when the spray of some plant is unknown. */
  spray: { fills: bigint; fill: Fraction; total: Fraction } | null;
  lines: Line[];
  labourCost: bigint | null;
};

export function found<T extends { id: string }>(list: T[], id: string): T {
  const one = list.find((each) => each.id === id);
  if (!one) throw new Error(`the file names ${id} and has none`);
  return one;
}

/** The sprayings of a shop between two days, both included, in the order in which they start. */
export const turnsOf = (file: ShopFile, today: string, last: string): Turn[] =>
  file.programs
    .flatMap((program) => turnsOfProgram(file, program, today, last))
    .sort((a, b) => a.startsAt - b.startsAt);

function turnsOfProgram(file: ShopFile, program: Program, today: string, last: string): Turn[] {
  // A spraying that was moved may come from a day behind the last one.
  const far = [last, ...program.changes.map(({ on }) => on)].sort().at(-1) ?? last;
  const until = program.endsOn !== null && program.endsOn < far ? program.endsOn : far;
  return daysOf(program.repeat, program.startsOn, until).flatMap((day, place) => {
    const change = program.changes.find(({ on }) => on === day);
    if (change?.kind === 'skipped' || change?.kind === 'done') return [];
    const date = change?.movedTo ?? day;
    if (date < today || date > last) return [];
    const recipe = found(file.recipes, program.recipes[place % program.recipes.length] ?? '');
    return [turnOf(file, program, recipe, date, change?.startTime ?? program.startTime)];
  });
}

function turnOf(file: ShopFile, program: Program, recipe: Recipe, date: string, startTime: string): Turn {
  const benches = program.benches.map((id) => found(file.benches, id));
  const startsAt = instantAt(file.shop.timeZone, date, minutesOf(startTime));
  const endsAt = startsAt + program.minutes * 60_000;
  const rei = longestRei(file, recipe);
  const spray = sprayOf(file, program, benches);
  const { wagePerHour } = file.shop;
  return {
    ...{ program, recipe, benches, date, startsAt, endsAt, spray },
    reopensAt: rei === null ? null : endsAt + rei,
    plants: benches.flatMap(({ plants }) => plants).reduce((sum, { count }) => sum + count, 0),
    lines: recipe.ingredients.map((ingredient) => {
      const product = found(file.products, ingredient.product);
      const each = perLitre(ingredient.dose, product, file.shop.dropMl);
      const amount = each && spray ? rounded(over(times(each, spray.total), decimal(1000))) : null;
      return { product, ingredient, amount };
    }),
    labourCost: wagePerHour === null ? null : rounded(fraction(micros(wagePerHour) * BigInt(program.minutes), 60n)),
  };
}

/** The longest interval of a recipe in milliseconds, whole minutes rounded up; null as soon as one is unknown. */
export function longestRei(file: ShopFile, { ingredients }: Recipe): number | null {
  const hours = ingredients.map(({ product }) => found(file.products, product).label.reiHours);
  let longest = 0;
  for (const one of hours) {
    if (one === null) return null;
    longest = Math.max(longest, Number(roundedUp(times(decimal(one), decimal(60)))) * 60_000);
  }
  return longest;
}

function sprayOf(file: ShopFile, program: Program, benches: Bench[]): Turn['spray'] {
  let volume = decimal(0);
  for (const { plants, coverage } of benches) {
    for (const { count, mlPerPlant } of plants) {
      if (mlPerPlant === null) return null;
      volume = plus(volume, times(times(decimal(count), decimal(mlPerPlant)), decimal(coverage)));
    }
  }
  const { sprayers } = file.shop;
  const sprayer = sprayers.find(({ name }) => name === program.sprayer) ?? sprayers[0];
  const capacity = volumeOf(sprayer?.capacity ?? file.shop.fillCapacity);
  const loss = volumeOf((sprayer ?? file.shop).lossPerFill);
  const step = volumeOf((sprayer ?? file.shop).measuringStep);
  if (volume.over === 0n) return { fills: 0n, fill: decimal(0), total: decimal(0) };
  const fills = roundedUp(over(volume, minus(capacity, loss)));
  const least = plus(over(volume, fraction(fills)), loss);
  const stepped = step.over === 0n ? least : times(fraction(roundedUp(over(least, step))), step);
  const fill = isLess(capacity, stepped) ? capacity : stepped;
  return { fills, fill, total: times(fraction(fills), fill) };
}
