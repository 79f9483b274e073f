import { atOnce, type Steps } from '@/shared/steps';
import type { Collection } from './check-ids';
import { idsOf } from './check-ids';
import { FORMAT, ShopFile } from './contract';
import { MOST_LISTED } from './limits';
import { type Mended, mended, valueAt, withValueAt } from './mend';
import { measureFaults } from './part-faults';
import { type Path, pathText } from './path';
import { checkReferences } from './references';
import { Settings } from './settings';
import { LISTS, THINGS } from './things';
import { touchedBenches } from './touched-benches';
import { type UnreadThing, withUnread } from './unread';

type Thing = { id: string };
type Lists = Record<Collection, Thing[]>;
type Noted = Omit<UnreadThing, 'benches'>;

/** A shop in the shape of a shop file, as its rows say it, sound or not. */
export type RawShop = Record<Collection, readonly Thing[]> & { shop: unknown };

/**
 * A shop as it can be read: one odd thing is read without what is odd, or left out, and the rest stays. What could not be
 * read is noted beside the file, with the benches that it may have closed.
 *
 * Takes    a shop out of its rows
 * Throws   ZodError when the settings say no sprayer: without one nothing can be told of any batch
 */
export const readWhatCanBe = (raw: RawShop): ShopFile => atOnce(readInSteps(raw));

/** The same with pauses. */
export function* readInSteps(raw: RawShop): Steps<ShopFile> {
  const whole = yield* wholeInSteps(raw);
  if (whole && (yield* isConsistent(whole))) return whole;
  yield;
  return withoutOddThings(raw);
}

function* isConsistent(whole: ShopFile): Steps<boolean> {
  yield;
  if (lostIn(whole).length > 0) return false;
  yield;
  return measureFaults(whole).length === 0;
}

function withoutOddThings(raw: RawShop): ShopFile {
  const noted = new Map<string, Noted>();
  const settings = readSettings(raw.shop);
  if (settings.odd.length > 0) note(noted, { list: 'shop', id: 'shop', odd: settings.odd, isLeftOut: false });
  const lists = Object.fromEntries(LISTS.map((list) => [list, readList(list, raw[list], noted)])) as Lists;
  do {
    leaveOutUnmeasured(lists, noted);
    // What names a thing that was left out is left out, too, until everything that is named is there.
  } while (leaveOut(lists, raw, noted));
  const file = ShopFile.parse({ format: FORMAT, shop: settings.thing, ...lists });
  const unread = [...noted.values()].map((one) => ({ ...one, benches: touchedBenches(raw, file, one) }));
  return withUnread(file, unread);
}

/** What stands for settings that a shop cannot be without. By another zone nothing is known of any bench. */
const STAND_INS: Readonly<Record<string, string>> = {
  name: 'Shop without a readable name',
  timeZone: 'UTC',
  currency: 'XXX',
};

function readSettings(raw: unknown): Mended {
  const first = mended(raw, Settings);
  if (first.thing !== null) return first;
  const lost = first.odd.flatMap(({ path }) => (path in STAND_INS ? [[path, STAND_INS[path]]] : []));
  const again = mended({ ...(raw as object), ...Object.fromEntries(lost) }, Settings);
  return { thing: again.thing, odd: first.odd };
}

/** Things that were held against the contract and are as it has them, by what they were read from. */
const sound = new WeakMap<Thing, Thing>();

/** So many things are held against the contract between two pauses. */
const FEW_THINGS = 50;

/**
 * A shop whose every part is as the contract has it; null when one is not. A thing that was held against the contract
 * once, and is the same in every respect because it is the same object, is not held against it again.
 */
function* wholeInSteps(raw: RawShop): Steps<ShopFile | null> {
  const settings = ShopFile.safeParse({ format: FORMAT, shop: raw.shop });
  if (!settings.success) return null;
  const lists: Partial<Record<Collection, Thing[]>> = {};
  for (const list of LISTS) {
    if (raw[list].length > MOST_LISTED[list]) return null;
    for (let from = 0; from < raw[list].length; from += FEW_THINGS) {
      if (!holdsAll(list, raw[list].slice(from, from + FEW_THINGS))) return null;
      yield;
    }
    lists[list] = raw[list].flatMap((thing) => sound.get(thing) ?? []);
  }
  return { ...settings.data, ...lists } as ShopFile;
}

function holdsAll(list: Collection, things: readonly Thing[]): boolean {
  for (const thing of things) {
    if (sound.has(thing)) continue;
    const read = THINGS[list].safeParse(thing);
    if (!read.success) return false;
    sound.set(thing, read.data);
  }
  return true;
}

function readList(list: Collection, raw: readonly Thing[], noted: Map<string, Noted>): Thing[] {
  return raw.flatMap((thing) => {
    const { thing: read, odd } = mended(thing, THINGS[list]);
    if (odd.length > 0) note(noted, { list, id: thing.id, odd, isLeftOut: read === null });
    return read === null ? [] : [read as Thing];
  });
}

function note(noted: Map<string, Noted>, { list, id, odd, isLeftOut }: Omit<Noted, 'isCaused'>, isCaused = false) {
  const key = `${list} ${id}`;
  const before = noted.get(key);
  noted.set(key, {
    ...{ list, id, odd: [...(before?.odd ?? []), ...odd] },
    isLeftOut: isLeftOut || before?.isLeftOut === true,
    isCaused: isCaused && before?.isCaused !== false,
  });
}

/** Leaves out whatever holds an amount or a dose that cannot be of its product. */
function leaveOutUnmeasured(lists: Lists, noted: Map<string, Noted>): void {
  const gone = new Map<Collection, Set<number>>();
  for (const { path, message } of measureFaults(lists as unknown as ShopFile)) {
    const [list, at, ...rest] = path as [Collection, number, ...Path];
    const thing = lists[list][at];
    if (!thing) continue;
    const odd = [{ path: pathText(rest), at: rest, message, is: valueAt(thing, rest) }];
    note(noted, { list, id: thing.id, odd, isLeftOut: true });
    gone.set(list, (gone.get(list) ?? new Set()).add(at));
  }
  for (const [list, places] of gone) lists[list] = lists[list].filter((_, at) => !places.has(at));
}

type Lost = { path: Path; collection: Collection; id: string };

/** Every place of a shop that names something which is not there. */
function lostIn(part: Pick<ShopFile, Collection>): Lost[] {
  const ids = idsOf(part as ShopFile);
  const lost: Lost[] = [];
  checkReferences(part as ShopFile, (path, collection, id) => {
    if (!ids[collection].has(id)) lost.push({ path, collection, id });
  });
  return lost;
}

/** Whether something was left out, or forgot what it named, because that is not there. */
function leaveOut(lists: Lists, raw: RawShop, noted: Map<string, Noted>): boolean {
  const lost = lostIn(lists as unknown as ShopFile);
  const gone = new Map<Collection, Set<number>>();
  for (const { path, collection, id } of lost) {
    const [list, at, ...rest] = path as [Collection, number, ...Path];
    const thing = lists[list][at];
    if (!thing) continue;
    const loose = looseIn(list, rest);
    const isUnread = raw[collection].some((one) => one.id === id);
    const message = `This names ${ONE[collection]} ${JSON.stringify(id)}, which ${isUnread ? 'cannot be read' : 'is not there'}.`;
    const odd = [{ path: pathText(rest), at: rest, message, is: id }];
    note(noted, { list, id: thing.id, odd, isLeftOut: loose === null }, isUnread);
    if (loose !== null) lists[list][at] = withValueAt(thing, loose, null) as Thing;
    else gone.set(list, (gone.get(list) ?? new Set()).add(at));
  }
  for (const [list, places] of gone) lists[list] = lists[list].filter((_, at) => !places.has(at));
  return lost.length > 0;
}

/** The part that may be unknown where something names what is not there; null where it cannot be read without. */
function looseIn(list: Collection, [field, line, part]: Path): Path | null {
  if (list === 'lots' && (field === 'order' || field === 'offer')) return [field];
  if (list === 'programs' && field === 'changes' && line !== undefined && part !== undefined)
    return [field, line, part];
  return list === 'applications' && field === 'acid' ? [field] : null;
}

const ONE: Record<Collection, string> = {
  suppliers: 'the supplier',
  products: 'the product',
  offers: 'the offer',
  lots: 'the lot',
  benches: 'the bench',
  recipes: 'the recipe',
  programs: 'the program',
  applications: 'the record',
  orders: 'the order',
};
