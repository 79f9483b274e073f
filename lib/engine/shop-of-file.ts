import { readArea } from '@/shared/measure/area';
import { readDose } from '@/shared/measure/dose';
import { readSize, readVolume, type Size } from '@/shared/measure/size';
import { minutes } from '@/shared/quantity/amounts';
import { type Exact, exact, multiply } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import { unreadBenches } from '@/shared/shop-file/unread';
import { atOnce, eachInSteps, type Steps } from '@/shared/steps';
import { readClockTime, readClosingTime } from '@/shared/time/clock-time';
import { type Day, readDay, WEEKDAYS } from '@/shared/time/day';
import { minutesDown } from '@/shared/time/hours';
import { readInstant } from '@/shared/time/instant';
import { readRepeat, settleUntil } from '@/shared/time/recurrence';
import { readZone, type Zone } from '@/shared/time/zone';
import { containersOf, offerOf, ordersOf, productsOf, sizeOf, supplierOf } from './goods-of-file';
import { counts } from './keepout/counting';
import { longestRecorded } from './keepout/reopening';
import { type Find, finder, known, maybe, money } from './known';
import type { Application, Bench, Ingredient, Measure, Product, Program, Recipe, Shop, Sprayer } from './shop';
import { underWayIn } from './under-way-of-file';

type Settings = ShopFile['shop'];
type FileProgram = ShopFile['programs'][number];
type FileApplication = ShopFile['applications'][number];

/**
 * The shop that a file describes, as the calculations take it: references followed, texts read, lots taken apart into
 * their containers.
 *
 * Takes   a file that passed `parseShopFile`
 * Rounds  a restricted-entry interval up to whole minutes, the time a mixed spray keeps down; sizes once, to µL or mg
 * Throws  RangeError when the file did not pass
 */
export const shopOfFile = (file: ShopFile): Shop => atOnce(shopInSteps(file));

/** So many records are followed between two pauses. */
const FEW_RECORDS = 200;

/** The same with pauses. */
export function* shopInSteps(file: ShopFile): Steps<Shop> {
  const settings = settingsOf(file.shop);
  const suppliers = file.suppliers.map((supplier) => supplierOf(supplier, closedDaysOf(file.shop)));
  const products = productsOf(file, settings.drop);
  const benches: Bench[] = file.benches.map(benchOf);
  const supplier = finder('supplier', suppliers);
  const product = finder('product', products);
  const offers = file.offers.map((offer) => offerOf(offer, supplier, product));
  const bench = finder('bench', benches);
  const recipes = file.recipes.map((each) => recipeOf(each, product, settings.drop));
  const recipe = finder('recipe', recipes);
  const unread = unreadBenches(file);
  const underWay = underWayIn(file, recipe, bench);
  const inError = new Set(file.applications.filter((record) => !counts(record)).map(({ id }) => id));
  yield;
  const applications = yield* eachInSteps(file.applications, FEW_RECORDS, (application) => ({
    ...applicationOf(application, recipe(application.recipe), product, settings.drop),
    benches: application.benches.map(bench),
  }));
  return {
    ...settings,
    suppliers,
    products,
    offers,
    containers: file.lots.flatMap((lot) => containersOf(lot, product(lot.product))),
    benches,
    recipes,
    programs: file.programs.map((program) => ({
      ...programOf(withoutErrors(program, inError), settings.zone, recipe, bench),
      sprayer: settings.sprayers.find(({ name }) => name === program.sprayer) ?? null,
    })),
    applications,
    orders: ordersOf(file, supplier, finder('offer', offers)),
    ...(unread.size > 0 && { unreadBenches: unread }),
    ...(underWay.length > 0 && { underWay }),
  };
}

type ShopSettings = Omit<
  Shop,
  | 'suppliers'
  | 'products'
  | 'offers'
  | 'containers'
  | 'benches'
  | 'recipes'
  | 'programs'
  | 'applications'
  | 'orders'
  | 'unreadBenches'
  | 'underWay'
>;

function settingsOf(shop: Settings): ShopSettings {
  return {
    name: shop.name,
    zone: known(readZone(shop.timeZone)),
    currency: shop.currency,
    units: shop.units,
    openingHours: openingHoursOf(shop),
    specialDays: specialDaysOf(shop),
    water: shop.water,
    sprayer: sprayerOf({ ...shop, capacity: shop.fillCapacity }),
    sprayers: shop.sprayers.map((sprayer) => ({ name: sprayer.name, ...sprayerOf(sprayer) })),
    measures: shop.measures.map(measureOf),
    drop: multiply(exact(shop.dropMl), exact(1000)),
    conductivityLimit: shop.conductivityLimit,
    safetyDays: shop.safetyDays,
    wagePerHour: money(shop.wagePerHour),
    sameModeInARow: shop.sameModeInARow,
    capitalPerYear: shop.capitalPerYear,
    minutesPerPlant: shop.minutesPerPlant,
    minutesPerBatch: shop.minutesPerBatch,
    oilSulfurDays: shop.oilSulfurDays,
    monthlyHighsC: shop.monthlyHighsC,
    oilHotC: shop.oilHotC,
    keepRecordsYears: shop.keepRecordsYears,
    ...{ address: shop.address, contact: shop.contact, emergency: shop.emergency },
  };
}

function openingHoursOf({ openingHours }: Settings): Shop['openingHours'] {
  const hours: Shop['openingHours'] = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };
  for (const weekday of WEEKDAYS) {
    hours[weekday] = openingsOf(openingHours[weekday]);
  }
  return hours;
}

const openingsOf = (hours: Settings['openingHours']['mon']): [number, number][] =>
  hours
    .map(([from, until]): [number, number] => [known(readClockTime(from)), known(readClosingTime(until))])
    .sort(([a], [b]) => a - b);

/** The days on which the shop is closed although its weekday has hours, or may have. */
const closedDaysOf = ({ specialDays }: Settings): Day[] =>
  specialDays.filter(({ hours }) => hours.length === 0).map(({ on }) => known(readDay(on)));

const specialDaysOf = ({ specialDays }: Settings): Shop['specialDays'] =>
  new Map(specialDays.map(({ on, name, hours }) => [known(readDay(on)), { name, hours: openingsOf(hours) }]));

const benchOf = (bench: ShopFile['benches'][number]): Bench => ({
  ...bench,
  area: maybe(bench.area, readArea),
  harvestOn: maybe(bench.harvestOn, readDay),
});

type FileSprayer = Omit<Settings['sprayers'][number], 'name'>;

const sprayerOf = ({ capacity, lossPerFill, measuringStep }: FileSprayer): Sprayer => ({
  capacity: known(readVolume(capacity)),
  lossPerFill: known(readVolume(lossPerFill)),
  measuringStep: known(readVolume(measuringStep)),
  printed: { capacity, step: measuringStep },
});

/** An ounce on a measure is one of weight: a measuring cup says "fl oz". */
function measureOf({ name, holds, step }: Settings['measures'][number]): Measure {
  const [most, least] = [known(readSize(holds, 'powder')), known(readSize(step, 'powder'))];
  const worth = (size: Size) => (size.kind === 'volume' ? size.microlitres : size.milligrams);
  return { name, kind: most.kind, holds: worth(most), step: worth(least), holdsText: holds, stepText: step };
}

const recipeOf = (recipe: ShopFile['recipes'][number], find: Find<Product>, drop: Exact): Recipe => ({
  id: recipe.id,
  name: recipe.name,
  targetPh: recipe.targetPh,
  useWithin: recipe.useWithinHours === null ? null : minutesDown(recipe.useWithinHours),
  ingredients: recipe.ingredients.map((ingredient) => {
    const product = find(ingredient.product);
    const { use, order } = ingredient;
    return { product, dose: known(readDose(ingredient.dose, product.form, drop)), use, order };
  }),
});

/**
 * A program in which turns that were done by a record that counts nowhere are to be done again, where they were moved to:
 * nothing is known to have been sprayed.
 */
function withoutErrors(program: FileProgram, inError: ReadonlySet<string>): FileProgram {
  if (inError.size === 0) return program;
  const changes = program.changes.flatMap((change) => {
    if (change.application === null || !inError.has(change.application)) return [change];
    return change.movedTo === null ? [] : [{ ...change, kind: 'moved' as const, application: null }];
  });
  return { ...program, changes };
}

function programOf(
  program: FileProgram,
  zone: Zone,
  recipe: Find<Recipe>,
  bench: Find<Bench>,
): Omit<Program, 'sprayer'> {
  const startMinute = known(readClockTime(program.startTime));
  const repeat = maybe(program.repeat, readRepeat);
  return {
    id: program.id,
    recipes: program.recipes.map(recipe),
    benches: program.benches.map(bench),
    startsOn: known(readDay(program.startsOn)),
    endsOn: maybe(program.endsOn, readDay),
    // An end in UTC is a day only once the zone and the time of day are known.
    repeat: repeat && settleUntil(repeat, zone, startMinute),
    startMinute,
    duration: minutes(program.minutes),
    changes: program.changes.map(({ on, kind, application, movedTo, startTime, reason }) => ({
      ...{ on: known(readDay(on)), kind, application, reason },
      movedTo: maybe(movedTo, readDay),
      startMinute: maybe(startTime, readClockTime),
    })),
  };
}

/** A record, of the recipe as it was sprayed: with what went in, where somebody noted that. */
function applicationOf(
  record: FileApplication,
  today: Recipe,
  find: Find<Product>,
  drop: Exact,
): Omit<Application, 'benches'> {
  const lines = record.products.map(({ product: id, dose, amount, reiMinutes }) => {
    const product = find(id);
    const use = today.ingredients.find((one) => one.product === product)?.use ?? null;
    const ingredient = { product, dose: known(readDose(dose, product.form, drop)), use, order: null };
    return { ingredient, amount: amount === null ? null : sizeOf(amount, product), rei: reiMinutes };
  });
  const acid = record.acid && find(record.acid.product);
  return {
    id: record.id,
    recipe: isAsToday(lines, today) ? today : { ...today, ingredients: lines.map(({ ingredient }) => ingredient) },
    startedAt: known(readInstant(record.startedAt)),
    endedAt: maybe(record.endedAt, readInstant),
    recordedRei: longestRecorded(lines.map(({ rei }) => rei)),
    amounts: lines.map(({ amount }) => amount),
    ...{ by: record.by, pH: record.pH, sprayed: maybe(record.sprayed, readVolume) },
    acid: record.acid && acid && { product: acid, amount: sizeOf(record.acid.amount, acid) },
    plannedCost: money(record.plannedCost),
    cost: money(record.cost),
    mixedAt: maybe(record.mixedAt, readInstant),
    closedUntil: maybe(record.closedUntil, readInstant),
    ...{ temperatureC: record.temperatureC, withdrawn: record.withdrawn, isExtra: record.extra },
  };
}

/** A record of the recipe as it still is shares it, so that what is worked out of a recipe is worked out once. */
const isAsToday = (lines: { ingredient: Ingredient }[], { ingredients }: Recipe): boolean =>
  lines.length === 0 ||
  (lines.length === ingredients.length &&
    lines.every(({ ingredient: { product, dose } }, line) => {
      const now = ingredients[line];
      return now !== undefined && now.product === product && now.dose.text === dose.text;
    }));
