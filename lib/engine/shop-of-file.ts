import { readDose } from '@/shared/measure/dose';
import { readMoney } from '@/shared/measure/money';
import { exactStockOf, readSize, readVolume } from '@/shared/measure/size';
import type { Reading } from '@/shared/outcome';
import { type Micros, minutes, type Stock } from '@/shared/quantity/amounts';
import type { Exact } from '@/shared/quantity/exact';
import { shareOut, wholeNearest } from '@/shared/quantity/rounding';
import type { ShopFile } from '@/shared/shop-file/contract';
import { readClockTime, readClosingTime } from '@/shared/time/clock-time';
import { readDay, WEEKDAYS } from '@/shared/time/day';
import { minutesDown, minutesUp } from '@/shared/time/hours';
import { readInstant } from '@/shared/time/instant';
import { readRepeat, settleUntil } from '@/shared/time/recurrence';
import { readZone, type Zone } from '@/shared/time/zone';
import type { Bench, Container, Offer, Product, Program, Recipe, Shop, Sprayer, Supplier } from './shop';

type Settings = ShopFile['shop'];
type FileProduct = ShopFile['products'][number];
type FileLot = ShopFile['lots'][number];
type FileProgram = ShopFile['programs'][number];

/**
 * The shop that a file describes, as the calculations take it: references followed, texts read, lots taken apart into
 * their containers.
 *
 * Takes   a file that passed `parseShopFile`
 * Rounds  a restricted-entry interval up to whole minutes, the time a mixed spray keeps down; sizes once, to µL or mg
 * Throws  RangeError when the file did not pass
 */
export function shopOfFile(file: ShopFile): Shop {
  const settings = settingsOf(file.shop);
  const suppliers = file.suppliers.map(supplierOf);
  const products = file.products.map(productOf);
  const benches: Bench[] = file.benches.map((bench) => ({ ...bench }));
  const supplier = finder('supplier', suppliers);
  const product = finder('product', products);
  const bench = finder('bench', benches);
  const recipes = file.recipes.map((each) => recipeOf(each, product));
  const recipe = finder('recipe', recipes);
  return {
    ...settings,
    suppliers,
    products,
    offers: file.offers.map((offer) => offerOf(offer, supplier, product)),
    containers: file.lots.flatMap((lot) => containersOf(lot, product(lot.product))),
    benches,
    recipes,
    programs: file.programs.map((program) => programOf(program, settings.zone, recipe, bench)),
    applications: file.applications.map((application) => ({
      id: application.id,
      recipe: recipe(application.recipe),
      benches: application.benches.map(bench),
      startedAt: known(readInstant(application.startedAt)),
      endedAt: maybe(application.endedAt, readInstant),
    })),
  };
}

type Find<T> = (id: string) => T;

function finder<T extends { id: string }>(what: string, things: T[]): Find<T> {
  const byId = new Map(things.map((thing) => [thing.id, thing]));
  return (id) => {
    const thing = byId.get(id);
    if (!thing) throw new RangeError(`shop file: there is no ${what} ${JSON.stringify(id)}`);
    return thing;
  };
}

function known<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new RangeError(`shop file: ${reading.message}`);
  return reading.value;
}

const maybe = <T>(text: string | null, reader: (text: string) => Reading<T>): T | null =>
  text === null ? null : known(reader(text));

const money = (text: string | null): Micros | null => maybe(text, readMoney);

type ShopSettings = Omit<
  Shop,
  'suppliers' | 'products' | 'offers' | 'containers' | 'benches' | 'recipes' | 'programs' | 'applications'
>;

function settingsOf(shop: Settings): ShopSettings {
  return {
    name: shop.name,
    zone: known(readZone(shop.timeZone)),
    currency: shop.currency,
    units: shop.units,
    openingHours: openingHoursOf(shop),
    water: shop.water,
    sprayer: sprayerOf(shop),
    safetyDays: shop.safetyDays,
    wagePerHour: money(shop.wagePerHour),
    sameModeInARow: shop.sameModeInARow,
    capitalPerYear: shop.capitalPerYear,
  };
}

function openingHoursOf({ openingHours }: Settings): Shop['openingHours'] {
  const hours: Shop['openingHours'] = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] };
  for (const weekday of WEEKDAYS) {
    hours[weekday] = openingHours[weekday].map(([from, until]) => [
      known(readClockTime(from)),
      known(readClosingTime(until)),
    ]);
    hours[weekday].sort(([a], [b]) => a - b);
  }
  return hours;
}

const sprayerOf = (shop: Settings): Sprayer => ({
  capacity: known(readVolume(shop.fillCapacity)),
  lossPerFill: known(readVolume(shop.lossPerFill)),
  measuringStep: known(readVolume(shop.measuringStep)),
});

const supplierOf = (supplier: ShopFile['suppliers'][number]): Supplier => ({
  id: supplier.id,
  name: supplier.name,
  freightPerOrder: money(supplier.freightPerOrder),
  freeFreightOver: money(supplier.freeFreightOver),
  minimumOrder: money(supplier.minimumOrder),
  workingDays: new Set(supplier.workingDays),
});

function productOf(product: FileProduct): Product {
  const { rates, reiHours, ...label } = product.label;
  const dose = (text: string) => readDose(text, product.form);
  return {
    ...product,
    label: {
      ...label,
      rates: rates.map(({ use, min, max }) => ({ use, min: maybe(min, dose), max: maybe(max, dose) })),
      rei: reiHours === null ? null : minutesUp(reiHours),
    },
  };
}

const sizeOf = (text: string, product: Product): Stock => wholeNearest<Stock>(exactSizeOf(text, product));

function exactSizeOf(text: string, product: Product): Exact {
  const size = exactStockOf(known(readSize(text, product.form)), product);
  if (size === null) throw new RangeError(`shop file: nobody knows how much ${text} of ${product.id} is`);
  return size;
}

function offerOf(offer: ShopFile['offers'][number], supplier: Find<Supplier>, find: Find<Product>): Offer {
  const product = find(offer.product);
  return {
    id: offer.id,
    supplier: supplier(offer.supplier),
    product,
    packText: offer.pack,
    pack: exactSizeOf(offer.pack, product),
    price: known(readMoney(offer.price)),
    breaks: offer.breaks.map(({ atLeast, price }) => ({ atLeast, price: known(readMoney(price)) })),
    leadDays: offer.leadDays,
  };
}

/** A lot of several is that many full containers, each with its share of what the lot cost. */
function containersOf(lot: FileLot, product: Product): Container[] {
  const size = sizeOf(lot.pack, product);
  const remaining = lot.remaining === null || lot.count > 1 ? size : sizeOf(lot.remaining, product);
  const paid = money(lot.paid);
  const shares = paid === null ? null : shareOut(paid, lot.count);
  const days = {
    receivedOn: known(readDay(lot.receivedOn)),
    openedOn: maybe(lot.openedOn, readDay),
    expiresOn: maybe(lot.expiresOn, readDay),
  };
  return Array.from({ length: lot.count }, (_, place) => ({
    lot: lot.id,
    place,
    product,
    packText: lot.pack,
    size,
    remaining,
    paid: shares?.[place] ?? null,
    ...days,
  }));
}

const recipeOf = (recipe: ShopFile['recipes'][number], find: Find<Product>): Recipe => ({
  id: recipe.id,
  name: recipe.name,
  targetPh: recipe.targetPh,
  useWithin: recipe.useWithinHours === null ? null : minutesDown(recipe.useWithinHours),
  ingredients: recipe.ingredients.map((ingredient) => {
    const product = find(ingredient.product);
    return { product, dose: known(readDose(ingredient.dose, product.form)), use: ingredient.use };
  }),
});

function programOf(program: FileProgram, zone: Zone, recipe: Find<Recipe>, bench: Find<Bench>): Program {
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
  };
}
