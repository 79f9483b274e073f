import { type Reading, read, unreadable } from '../outcome';
import { type Exact, exact, fraction, multiply } from '../quantity/exact';
import { quoted } from './number-text';

/** A unit that people write. `worth` is µL for a volume and mg for a mass, exact. */
export type Unit = { name: string; kind: 'volume' | 'mass'; worth: Exact };

const of = (whole: Unit, over: bigint, under: bigint): Exact => multiply(whole.worth, fraction(over, under));

const GALLON: Unit = { name: 'gal', kind: 'volume', worth: exact('3785411.784') };
const FLUID_OUNCE: Unit = { name: 'fl oz', kind: 'volume', worth: of(GALLON, 1n, 128n) };
const IMPERIAL_GALLON: Unit = { name: 'imp gal', kind: 'volume', worth: exact('4546090') };
const POUND: Unit = { name: 'lb', kind: 'mass', worth: exact('453592.37') };

/** Avoirdupois, and only on a powder: whether an ounce of a liquid is a measure or a weight has to be asked. */
export const OUNCE: Unit = { name: 'oz', kind: 'mass', worth: of(POUND, 1n, 16n) };
export const TEASPOON: Unit = { name: 'tsp', kind: 'volume', worth: of(FLUID_OUNCE, 1n, 6n) };

/** What a drop is worth, in µL, until the shop has counted its own dropper. */
export const USUAL_DROP: Exact = exact('50');

/*
 * Source  US customary by its definition, 231 cubic inches to the gallon and 453.59237 g to the pound; imperial by the
 *         gallon of 4.54609 L. An imperial unit is only ever meant when it is written as one.
 */
const UNITS: [unit: Unit, spellings: string[]][] = [
  [{ name: 'mL', kind: 'volume', worth: exact('1000') }, ['ml', 'mls', 'cc', 'ccs', 'cm3', ...metre('milli', 'lit')]],
  [{ name: 'L', kind: 'volume', worth: exact('1000000') }, ['l', ...metre('', 'lit')]],
  [{ name: 'µL', kind: 'volume', worth: exact('1') }, ['ul', ...metre('micro', 'lit')]],
  [GALLON, american('gal', 'gals', 'gallon', 'gallons')],
  [{ name: 'qt', kind: 'volume', worth: of(GALLON, 1n, 4n) }, american('qt', 'qts', 'quart', 'quarts')],
  [{ name: 'pt', kind: 'volume', worth: of(GALLON, 1n, 8n) }, american('pt', 'pts', 'pint', 'pints')],
  [
    FLUID_OUNCE,
    american('fl oz', 'floz', 'fl ozs', 'fl ounce', 'fl ounces', 'fluid oz', 'fluid ounce', 'fluid ounces'),
  ],
  [{ name: 'cup', kind: 'volume', worth: of(FLUID_OUNCE, 8n, 1n) }, american('cup', 'cups')],
  [
    { name: 'tbsp', kind: 'volume', worth: of(FLUID_OUNCE, 1n, 2n) },
    american('tbsp', 'tbsps', 'tbs', 'tbl', 'tablespoon', 'tablespoons'),
  ],
  [TEASPOON, american('tsp', 'tsps', 'teaspoon', 'teaspoons')],
  [{ name: 'drop', kind: 'volume', worth: USUAL_DROP }, ['drop', 'drops']],
  [IMPERIAL_GALLON, imperial('gal', 'gals', 'gallon', 'gallons')],
  [{ name: 'imp qt', kind: 'volume', worth: of(IMPERIAL_GALLON, 1n, 4n) }, imperial('qt', 'qts', 'quart', 'quarts')],
  [{ name: 'imp pt', kind: 'volume', worth: of(IMPERIAL_GALLON, 1n, 8n) }, imperial('pt', 'pts', 'pint', 'pints')],
  [
    { name: 'imp fl oz', kind: 'volume', worth: of(IMPERIAL_GALLON, 1n, 160n) },
    imperial('fl oz', 'floz', 'fluid oz', 'fluid ounce', 'fluid ounces'),
  ],
  [{ name: 'mg', kind: 'mass', worth: exact('1') }, ['mg', 'milligram', 'milligrams', 'milligramme', 'milligrammes']],
  [{ name: 'g', kind: 'mass', worth: exact('1000') }, ['g', 'gm', 'gms', 'gram', 'grams', 'gramme', 'grammes']],
  [{ name: 'kg', kind: 'mass', worth: exact('1000000') }, ['kg', 'kgs', 'kilo', 'kilos', 'kilogram', 'kilograms']],
  [OUNCE, ['oz', 'ozs', 'ounce', 'ounces']],
  [
    { name: 'oz wt', kind: 'mass', worth: OUNCE.worth },
    ['oz wt', 'wt oz', 'weight oz', 'oz weight', 'oz av', 'oz avdp'],
  ],
  [POUND, ['lb', 'lbs', 'pound', 'pounds']],
];

function metre(prefix: string, stem: string): string[] {
  return ['re', 'res', 'er', 'ers'].map((ending) => `${prefix}${stem}${ending}`);
}

function american(...spellings: string[]): string[] {
  return [...spellings, ...spellings.map((spelling) => `us ${spelling}`)];
}

function imperial(...spellings: string[]): string[] {
  return spellings.flatMap((spelling) => [`imp ${spelling}`, `imperial ${spelling}`, `uk ${spelling}`]);
}

const BY_SPELLING = new Map(
  UNITS.flatMap(([unit, spellings]) => spellings.map((spelling) => [spelling, unit] as const)),
);

/**
 * The unit that a text names, in any case and any usual spelling: "gal", "Gallons", "fl. oz.", "µL".
 *
 * Takes    the text, and what a drop of this shop is worth in µL
 * Refuses  a unit it does not know, naming the nearest ones and then all of them
 */
export function readUnit(text: string, drop: Exact): Reading<Unit> {
  const unit = BY_SPELLING.get(plain(text));
  if (unit) return read(isDrop(unit) ? { ...unit, worth: drop } : unit);
  const known = UNITS.map(([{ name }]) => name).join(', ');
  return unreadable(
    `${quoted(text)} is not a unit known here. Did you mean ${nearest(plain(text))}? Known are ${known}.`,
  );
}

export const isDrop = (unit: Unit): boolean => unit.name === 'drop';

function plain(text: string): string {
  const letters = text.toLowerCase().replace(/[µμ]/g, 'u').replaceAll('³', '3');
  return letters.replace(/[.\s_-]+/g, ' ').trim();
}

function nearest(text: string): string {
  const near = UNITS.map(([{ name }, spellings]) => ({
    name,
    changes: Math.min(...spellings.map((spelling) => changesBetween(text, spelling))),
  }));
  const [first, second, third] = near.sort((a, b) => a.changes - b.changes).map(({ name }) => name);
  return `${first}, ${second} or ${third}`;
}

/** How many letters must be added, dropped or changed to make one word from the other (Levenshtein). */
function changesBetween(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, place) => place);
  for (const [line, letter] of [...from].entries()) {
    const next = [line + 1];
    for (let place = 1; place <= to.length; place += 1) {
      const kept = (row[place - 1] ?? 0) + (letter === to[place - 1] ? 0 : 1);
      next.push(Math.min(kept, (row[place] ?? 0) + 1, (next[place - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[to.length] ?? 0;
}
