import 'server-only';
import { plainInstant, plainMoney } from '@/lib/engine/exchange/plain-text';
import { FORMAT, ShopFile } from '@/shared/shop-file/contract';
import { showClockTime } from '@/shared/time/clock-time';
import { Instant } from '@/shared/time/instant';
import type { Rows } from './database';
import { lotsOf } from './lot-rows';
import { toMicros, toWhole } from './whole';

/**
 * A whole shop out of its rows, as the shop file that the export writes.
 *
 * Takes    the rows to read from: a transaction, so that all of it is of one moment
 * Gives    null when there is no such shop
 * Throws   ZodError when the rows say what no shop file may say; RangeError when an amount is not whole
 */
export async function shopFromRows(rows: Rows, shopId: string): Promise<ShopFile | null> {
  const shop = await rows.shop.findUnique({ where: { id: shopId } });
  if (!shop) return null;
  const mine = { where: { shopId }, orderBy: { position: 'asc' } } as const;
  return ShopFile.parse({
    format: FORMAT,
    shop: settingsOf(shop),
    suppliers: (await rows.supplier.findMany(mine)).map(supplierOf),
    products: await productsOf(rows, mine),
    offers: await offersOf(rows, mine),
    lots: await lotsOf(rows, shopId),
    benches: (await rows.bench.findMany({ ...mine, include: { plants: IN_ORDER } })).map(benchOf),
    recipes: await recipesOf(rows, mine),
    programs: await programsOf(rows, mine),
    applications: await applicationsOf(rows, mine),
  });
}

type Mine = { where: { shopId: string }; orderBy: { position: 'asc' } };
type Row<T extends (...from: never[]) => unknown> = NonNullable<Awaited<ReturnType<T>>>;

const IN_ORDER = { orderBy: { position: 'asc' } } as const;
/** The highest number is what counts today. */
const NEWEST = { orderBy: { number: 'desc' }, take: 1 } as const;

function settingsOf(shop: Row<Rows['shop']['findUnique']>) {
  const { alkalinityMgPerLCaCO3, waterPh: pH } = shop;
  return {
    name: shop.name,
    timeZone: shop.timeZone,
    currency: shop.currency,
    units: shop.units,
    openingHours: shop.openingHours,
    water: alkalinityMgPerLCaCO3 === null || pH === null ? null : { alkalinityMgPerLCaCO3, pH },
    fillCapacity: shop.fillCapacity,
    lossPerFill: shop.lossPerFill,
    measuringStep: shop.measuringStep,
    safetyDays: shop.safetyDays,
    wagePerHour: money(shop.wagePerHour),
    sameModeInARow: shop.sameModeInARow,
    capitalPerYear: shop.capitalPerYear,
  };
}

const supplierOf = (supplier: Row<Rows['supplier']['findUnique']>) => ({
  id: supplier.id,
  name: supplier.name,
  freightPerOrder: money(supplier.freightPerOrder),
  freeFreightOver: money(supplier.freeFreightOver),
  minimumOrder: money(supplier.minimumOrder),
  workingDays: supplier.workingDays,
});

async function productsOf(rows: Rows, mine: Mine) {
  const products = await rows.product.findMany({ ...mine, include: { contents: IN_ORDER, rates: IN_ORDER } });
  return products.map((product) => ({
    id: product.id,
    name: product.name,
    kind: product.kind,
    form: product.form,
    formulation: product.formulation,
    densityGPerMl: product.densityGPerMl,
    gramsPerTeaspoon: product.gramsPerTeaspoon,
    contents: product.contents.map(({ substance, amount, basis }) => ({ substance, amount, basis })),
    label: {
      rates: product.rates.map(({ use, min, max }) => ({ use, min, max })),
      reiHours: product.reiHours,
      phiDays: product.phiDays,
      maxApplicationsPerYear: product.maxApplicationsPerYear,
      minDaysBetween: product.minDaysBetween,
      modes: product.modes,
      signalWord: product.signalWord,
      protectiveEquipment: product.protectiveEquipment,
      sprayPh: phRange(product.sprayPhMin, product.sprayPhMax),
      doNotMixWith: product.doNotMixWith,
      registration: product.registration,
    },
    shelfLife: { unopenedDays: product.unopenedDays, openedDays: product.openedDays },
    mixOrder: product.mixOrder,
    alkaliSilicate: product.alkaliSilicate,
  }));
}

const phRange = (min: number | null, max: number | null) => (min === null || max === null ? null : { min, max });

async function offersOf(rows: Rows, mine: Mine) {
  const prices = { prices: { ...NEWEST, include: { breaks: IN_ORDER } } };
  const offers = await rows.offer.findMany({ ...mine, include: prices });
  return offers.map(({ id, supplierId, productId, packText, leadDays, prices: [today] }) => ({
    id,
    supplier: supplierId,
    product: productId,
    pack: packText,
    price: money(today?.price ?? null),
    breaks: today?.breaks.map(({ atLeast, price }) => ({ atLeast, price: money(price) })),
    leadDays,
  }));
}

const benchOf = ({ id, name, customers, enclosed, coverage, plants }: BenchRow) => ({
  id,
  name,
  customers,
  enclosed,
  coverage,
  plants: plants.map(({ name, pot, count, mlPerPlant }) => ({ name, pot, count, mlPerPlant })),
});

type BenchRow = Row<Rows['bench']['findUnique']> & {
  plants: { name: string; pot: string | null; count: number; mlPerPlant: number | null }[];
};

async function recipesOf(rows: Rows, mine: Mine) {
  const versions = { versions: { ...NEWEST, include: { ingredients: IN_ORDER } } };
  const recipes = await rows.recipe.findMany({ ...mine, include: versions });
  return recipes.map(({ id, versions: [today] }) => ({
    id,
    name: today?.name,
    targetPh: today?.targetPh,
    useWithinHours: today?.useWithinHours,
    ingredients: today?.ingredients.map(({ productId, dose, use }) => ({ product: productId, dose, use })),
  }));
}

async function programsOf(rows: Rows, mine: Mine) {
  const programs = await rows.program.findMany({ ...mine, include: { recipes: IN_ORDER, benches: IN_ORDER } });
  return programs.map((program) => ({
    id: program.id,
    recipes: program.recipes.map(({ recipeId }) => recipeId),
    benches: program.benches.map(({ benchId }) => benchId),
    startsOn: program.startsOn,
    endsOn: program.endsOn,
    repeat: program.repeat,
    startTime: showClockTime(program.startMinute),
    minutes: program.minutes,
  }));
}

async function applicationsOf(rows: Rows, mine: Mine) {
  const versions = { versions: { ...NEWEST, include: { benches: IN_ORDER } } };
  const applications = await rows.application.findMany({ ...mine, include: versions });
  return applications.map(({ id, versions: [today] }) => ({
    id,
    recipe: today?.recipeId,
    benches: today?.benches.map(({ benchId }) => benchId),
    startedAt: moment(today?.startedAt ?? null),
    endedAt: moment(today?.endedAt ?? null),
  }));
}

const money = (stored: bigint | null): string | null => (stored === null ? null : plainMoney(toMicros(stored)));

const moment = (stored: bigint | null): string | null =>
  stored === null ? null : plainInstant(Instant.parse(toWhole(stored)));
