import { readArea } from '../measure/area';
import { readVolume } from '../measure/size';
import { type Reading, read, unreadable } from '../outcome';
import { compare, type Exact, ZERO } from '../quantity/exact';
import { type Day, readDay } from '../time/day';

/** So many plants of one group on a bench, the group by its place there from 0. */
type PlantsAsked = { bench: string; group: number; count: number };

/** How much is to be mixed. Benches beside a volume say where it goes, not how much it is. */
export type MixWhat =
  | { kind: 'planned' }
  | { kind: 'benches'; benches: string[] }
  | { kind: 'plants'; plants: PlantsAsked[]; area: Typed | null }
  | { kind: 'volume'; volume: Typed; benches: string[]; area: Typed | null };

/** A volume in mL or a ground in m², exact, beside the text that it was typed as. */
type Typed = { text: string; value: Exact };

/** Which mix an address asks for. */
export type MixQuery = {
  /** The recipe by its id; null: the one that is planned. */
  recipe: string | null;
  planned: { program: string; on: Day } | null;
  what: MixWhat;
  /** Which of the shop's sprayers, from 0; null: the program's own, or else the first. */
  sprayer: number | null;
};

/** Names and values of an address or a form, in their order. */
export type Pairs = readonly (readonly [name: string, value: string])[];

/**
 * The mix that an address asks for: `recipe=R`, and one of `bench=B` (repeated), `plants=B/GROUP/COUNT` (repeated) or
 * `volume=2 gal` (with `area=130 sq ft` and benches, if any); `sprayer=N`; for a planned one `program=G&on=DAY`.
 *
 * A form that lets somebody choose sends all three, and `by` with the one that counts. It names plants as
 * `count:B/GROUP`, with how many; those left empty, or at nothing, are none.
 *
 * Refuses  neither a recipe nor a planned spraying; a volume, an area, a day or a number that cannot be read; nothing to
 *          mix for
 */
export function readMixQuery(pairs: Pairs): Reading<MixQuery> {
  const one = (name: string) => pairs.find(([key, value]) => key === name && value.trim() !== '')?.[1].trim() ?? null;
  const recipe = one('recipe');
  const planned = readPlanned(one('program'), one('on'));
  if (!planned.ok) return planned;
  if (recipe === null && planned.value === null) return unreadable('Choose what is to be mixed: name a recipe.');
  const sprayer = one('sprayer');
  if (sprayer !== null && !/^\d{1,3}$/.test(sprayer)) return unreadable('Choose a sprayer of the shop.');
  const what = readWhat(pairs, one, planned.value !== null);
  if (!what.ok) return what;
  return read({
    ...{ recipe, planned: planned.value, what: what.value },
    sprayer: sprayer === null ? null : Number(sprayer),
  });
}

type One = (name: string) => string | null;

function readPlanned(program: string | null, on: string | null): Reading<MixQuery['planned']> {
  if (program === null && on === null) return read(null);
  if (program === null || on === null) return unreadable('A planned spraying is named by its program and its day.');
  const day = readDay(on);
  return day.ok ? read({ program, on: day.value }) : day;
}

function readWhat(pairs: Pairs, one: One, isPlanned: boolean): Reading<MixWhat> {
  const benches = [...new Set(pairs.flatMap(([name, value]) => (name === 'bench' && value !== '' ? [value] : [])))];
  const volume = one('volume');
  const named = pairs.some(([name, value]) => name === 'plants' || (name.startsWith(COUNT) && !isNone(value)));
  const by = one('by') ?? (volume !== null ? 'volume' : named ? 'plants' : 'benches');
  if (by === 'volume') return readVolumeAsked(volume, one('area'), benches);
  if (by === 'plants') return readPlants(pairs, one('area'));
  if (benches.length > 0) return read({ kind: 'benches', benches });
  return isPlanned
    ? read({ kind: 'planned' })
    : unreadable('Say what it is for: choose benches, count the plants, or write a volume such as "2 gal".');
}

/** How a form names the count of a group of plants. */
export const COUNT = 'count:';

const isNone = (value: string): boolean => /^0*$/.test(value.trim());

function readVolumeAsked(text: string | null, areaText: string | null, benches: string[]): Reading<MixWhat> {
  if (text === null) return unreadable('Write how much is to be mixed, such as "2 gal".');
  const ml = readVolume(text);
  if (!ml.ok) return ml;
  if (compare(ml.value, ZERO) === 0) return unreadable('Write a volume above nothing, such as "2 gal".');
  const area = readAreaAsked(areaText);
  return area.ok ? read({ kind: 'volume', volume: { text, value: ml.value }, benches, area: area.value }) : area;
}

function readAreaAsked(text: string | null): Reading<Typed | null> {
  if (text === null) return read(null);
  const area = readArea(text);
  return area.ok ? read({ text, value: area.value }) : area;
}

function readPlants(pairs: Pairs, areaText: string | null): Reading<MixWhat> {
  const plants: PlantsAsked[] = [];
  for (const [name, value] of pairs) {
    const asked = name === 'plants' ? value : name.startsWith(COUNT) && !isNone(value) ? counted(name, value) : null;
    if (asked === null) continue;
    const [, bench, group, count] = /^(.+)\/(\d{1,4})\/([1-9]\d{0,6})$/.exec(asked) ?? [];
    if (bench === undefined) return unreadable(`"${value}" is no number of plants. Write a whole one, such as 14.`);
    plants.push({ bench, group: Number(group), count: Number(count) });
  }
  if (plants.length === 0) return unreadable('Count the plants: write beside each kind how many of them are sprayed.');
  const area = readAreaAsked(areaText);
  return area.ok ? read({ kind: 'plants', plants, area: area.value }) : area;
}

const counted = (name: string, value: string): string => `${name.slice(COUNT.length)}/${value.trim()}`;

/** The same as the shortest address: what the links and the figures of a mix carry. */
export function mixQueryText({ recipe, planned, what, sprayer }: MixQuery): string {
  const pairs = new URLSearchParams();
  if (recipe !== null) pairs.append('recipe', recipe);
  if (planned) {
    pairs.append('program', planned.program);
    pairs.append('on', planned.on);
  }
  if (what.kind === 'benches' || what.kind === 'volume') for (const id of what.benches) pairs.append('bench', id);
  if (what.kind === 'volume') pairs.append('volume', what.volume.text);
  if (what.kind === 'plants') {
    for (const { bench, group, count } of what.plants) pairs.append('plants', `${bench}/${group}/${count}`);
  }
  if ((what.kind === 'plants' || what.kind === 'volume') && what.area) pairs.append('area', what.area.text);
  // Without a program the first sprayer is meant anyway.
  if (sprayer !== null && (sprayer > 0 || planned)) pairs.append('sprayer', String(sprayer));
  return pairs.toString();
}
