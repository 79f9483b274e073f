import 'server-only';
import { celsiusTyped, readCelsius } from '@/shared/forms/celsius';
import type { AmendRecord } from '@/shared/forms/record';
import { readNumber } from '@/shared/forms/sent-fields';
import type { Fault, Reading } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type Instant, instantOf } from '@/shared/time/instant';
import { localTimeText, readLocalTime } from '@/shared/time/local-time';
import type { Zone } from '@/shared/time/zone';
import { writerOf } from '../data/application-rows';
import { newCommandId } from '../data/new-id';
import { type RecordVersion, recordVersions } from '../data/record-versions';
import { shopHere } from '../data/shops';
import { snapshotOf } from '../data/snapshot';
import { plainInstant } from '../engine/exchange/plain-text';
import { nameIn } from '../engine/name-in';
import { treatedPlace, treatedPlants } from '../engine/record/treated';
import type { Shop } from '../engine/shop';
import type { AboutRecord } from './record';
import { shopsAndShown } from './shown-shop';

type FileApplication = ShopFile['applications'][number];
type Choice = { id: string; name: string };

/** The texts that the form shows to begin with, by field. */
export type AmendTexts = Record<
  Exclude<keyof AmendRecord, 'bench' | 'product' | 'amount' | 'gone' | 'version'>,
  string
>;

export type AmendScreen = {
  about: AboutRecord;
  title: string;
  texts: Partial<AmendTexts>;
  units: Shop['units'];
  /** Whether crop and location are not on record, and what stands there today is shown instead. */
  suggested: { crop: boolean; location: boolean };
  recipes: Choice[];
  benches: (Choice & { chosen: boolean })[];
  products: (Choice & { amount: string })[];
  others: Choice[];
};

/** What the form that amends a record of the shop that is looked at shows. Null when there is no such record. */
export async function amendScreen(application: string): Promise<AmendScreen | null> {
  const { shown } = await shopsAndShown();
  const its = shown && (await recordIn(shown.id, application));
  if (!shown || !its) return null;
  const { shop, newest, written } = its;
  const on = new Set(newest.benches);
  const benches = shop.benches.filter(({ id }) => on.has(id));
  const todays = { crop: treatedPlants(benches, null), location: treatedPlace(benches, shop.address) };
  return {
    about: { shopId: shown.id, application, version: newest.number, formId: newCommandId() },
    title: newest.recipeName,
    texts: textsOf(written, newest, shop, todays),
    units: shop.units,
    suggested: { crop: written.crop === null, location: written.location === null },
    recipes: shop.recipes.map(({ id, name }) => ({ id, name })),
    benches: shop.benches.map(({ id, name }) => ({ id, name, chosen: on.has(id) })),
    products: written.products.map((line) => ({
      ...{ id: line.product, name: line.name ?? nameIn(shop.products, line.product), amount: line.amount ?? '' },
    })),
    others: shop.products
      .filter(({ id }) => !written.products.some(({ product }) => product === id))
      .map(({ id, name }) => ({ id, name })),
  };
}

type Treated = Record<'crop' | 'location', string | null>;

function textsOf(
  record: FileApplication,
  version: RecordVersion,
  { zone, units }: Shop,
  today: Treated,
): Partial<AmendTexts> {
  const time = (instant: number | null) => (instant === null ? '' : localTimeText(instantOf(instant), zone));
  const { recipe, by, plants, sprayed, leftover, leftoverWent, conditions, temperatureC, pH } = record;
  return {
    ...{ recipe, by: by ?? '', plants: plants ?? '', sprayed: sprayed ?? '', leftover: leftover ?? '' },
    ...{ leftoverWent: leftoverWent ?? '', conditions: conditions ?? '' },
    ...{ startedAt: time(version.startedAt), endedAt: time(version.endedAt), mixedAt: time(version.details.mixedAt) },
    ...{ temperature: temperatureC === null ? '' : celsiusTyped(temperatureC, units), pH: pH === null ? '' : `${pH}` },
    ...{ crop: record.crop ?? today.crop ?? '', location: record.location ?? today.location ?? '' },
  };
}

type InShop = { shop: Shop; file: ShopFile; newest: RecordVersion; written: FileApplication };

async function recordIn(shopId: string, application: string): Promise<InShop | null> {
  const newest = (await recordVersions(shopId, application)).at(-1);
  if (!newest) return null;
  const { file, shop } = await snapshotOf(shopId);
  return { shop, file, newest, written: writerOf(file.products)(newest) };
}

/**
 * What a sent form says of a record, as a shop file writes it.
 *
 * Gives   null when there is no such record; faults, each at its field
 */
export async function amendedIn(
  sent: AmendRecord,
): Promise<{ change: Partial<FileApplication>; faults: Fault[] } | null> {
  const its = (await shopHere(sent.shop)) && (await recordIn(sent.shop, sent.application));
  if (!its) return null;
  const faults: Fault[] = [];
  const { newest, written } = its;
  const { zone } = its.shop;
  const time = (field: 'startedAt' | 'endedAt' | 'mixedAt', was: number | null): string | null => {
    const read = timeIn(sent[field], was, zone);
    if (read.message) faults.push({ path: field, message: read.message });
    return read.at && plainInstant(read.at);
  };
  const number = (field: 'temperature' | 'pH', reading: Reading<number | null>): number | null => {
    if (reading.ok) return reading.value;
    faults.push({ path: field, message: reading.message });
    return null;
  };
  const change = {
    ...{ recipe: sent.recipe || written.recipe, benches: sent.bench },
    startedAt: time('startedAt', newest.startedAt) ?? written.startedAt,
    ...{ endedAt: time('endedAt', newest.endedAt), mixedAt: time('mixedAt', newest.details.mixedAt) },
    ...textsIn(sent),
    ...treatedIn(sent, its),
    temperatureC: number('temperature', readCelsius(sent.temperature, its.shop.units)),
    pH: number('pH', readNumber(sent.pH, 'Write a pH, such as 6.2.')),
    products: linesIn(sent, its, faults),
  };
  if (sent.startedAt === '') faults.push({ path: 'startedAt', message: 'Write when spraying began.' });
  return { change, faults };
}

/**
 * What was treated and where that is. On other benches it is what stands there, unless somebody wrote it anew.
 */
function treatedIn(sent: AmendRecord, { shop, written, newest }: InShop): Treated {
  const typed = { crop: sent.crop || null, location: sent.location || null };
  const isSame = sent.bench.length === newest.benches.length && sent.bench.every((id) => newest.benches.includes(id));
  if (isSame) return typed;
  const [was, is] = [newest.benches, sent.bench].map((ids) => shop.benches.filter(({ id }) => ids.includes(id)));
  const follow = (said: string | null, before: (string | null)[], now: string | null) =>
    said === null || before.includes(said) ? now : said;
  const plants = sent.plants || null;
  return {
    crop: follow(typed.crop, [written.crop, treatedPlants(was ?? [], null)], treatedPlants(is ?? [], plants)),
    location: follow(
      typed.location,
      [written.location, treatedPlace(was ?? [], shop.address)],
      treatedPlace(is ?? [], shop.address),
    ),
  };
}

const textsIn = (sent: AmendRecord) => ({
  ...{ by: sent.by || null, plants: sent.plants || null },
  ...{ sprayed: sent.sprayed || null, leftover: sent.leftover || null, leftoverWent: sent.leftoverWent || null },
  conditions: sent.conditions || null,
});

/** A time that still says what the record says is the record's own moment, to the second. */
function timeIn(text: string, was: number | null, zone: Zone): { at: Instant | null; message?: string } {
  if (text === '') return { at: null };
  if (was !== null && localTimeText(instantOf(was), zone) === text) return { at: instantOf(was) };
  const reading = readLocalTime(text, zone);
  return reading.ok ? { at: reading.value } : { at: null, message: reading.message };
}

/** What went in: the lines of the record with the amounts as typed, without what did not go in, and what went in besides. */
function linesIn(sent: AmendRecord, { written, file, shop }: InShop, faults: Fault[]): FileApplication['products'] {
  const kept = written.products
    .filter(({ product }) => !sent.gone.includes(product))
    .map((line) => {
      const at = sent.product.indexOf(line.product);
      return at === -1 ? line : { ...line, amount: sent.amount[at]?.trim() || null };
    });
  // Another recipe says what went in, until somebody says otherwise of it.
  if (sent.recipe !== '' && sent.recipe !== written.recipe) return [];
  if (sent.moreProduct === '') return kept;
  const dose = doseOf(sent, file);
  if (dose === null) faults.push({ path: 'moreAmount', message: NO_DOSE });
  const asThen = { name: null, registration: null, actives: null, reiMinutes: null };
  const more = { product: sent.moreProduct, dose: dose ?? '', amount: sent.moreAmount || null, ...asThen };
  return shop.products.some(({ id }) => id === sent.moreProduct) ? [...kept, more] : kept;
}

const NO_DOSE = 'Write how much went in, and above how much spray was mixed: the dose follows from both.';

/** The dose of what went in besides: as the recipe has it; else what went in over the spray that was mixed. */
function doseOf({ moreProduct, moreAmount, recipe, sprayed }: AmendRecord, { recipes }: ShopFile): string | null {
  const its = recipes.find(({ id }) => id === recipe)?.ingredients.find(({ product }) => product === moreProduct);
  if (its) return its.dose;
  return moreAmount === '' || sprayed === '' ? null : `${moreAmount}/${sprayed}`;
}
