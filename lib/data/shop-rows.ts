import 'server-only';
import type { Collection } from '@/lib/engine/exchange/compare';
import { FORMAT, type ShopFile } from '@/shared/shop-file/contract';
import { readInSteps } from '@/shared/shop-file/read-what-can-be';
import { showClockTime } from '@/shared/time/clock-time';
import { applicationsOf, type Reading } from './application-rows';
import { byOwner, keyOf, MOST_NAMED, newestByOwner } from './by-owner';
import type { Rows } from './database';
import { lotsOf } from './lot-rows';
import { ordersOf } from './order-rows';
import { AT_ONCE } from './pace';
import { askedYesNo } from './readable-cells';
import { moneyText } from './saving';
import { underWayOf } from './under-way';

/** The things of a shop that are wanted, by list and id: of a list that is not named, none. */
type Wanted = ReadonlyMap<Collection | 'shop', ReadonlySet<string>>;

/**
 * A shop out of its rows, in the shape of a shop file, and not yet held against its contract: whatever a row says stands
 * in it, sound or not.
 *
 * Takes    the rows to read from: a transaction, so that all of it is of one moment; and what of the shop is wanted, lots
 *          by the ids they came in with. The settings always are, and the products that lots and records name
 * Gives    null when there is no such shop
 */
export async function rawShop(rows: Rows, shopId: string, wanted: Wanted | null = null, reading: Reading = {}) {
  const shop = await rows.shop.findUnique({ where: { id: shopId } });
  if (!shop) return null;
  const only = (list: Collection) => (wanted === null ? null : (wanted.get(list) ?? NONE));
  const of = (list: Collection) => mineOf(shopId, only(list));
  const read = async <T>(list: Collection, things: () => Promise<T[]>): Promise<T[]> => {
    await reading.pace?.pause();
    return only(list)?.size === 0 ? [] : things();
  };
  const lots = await read('lots', () => lotsOf(rows, shopId, only('lots'), reading.pace));
  const applications = await read('applications', () => applicationsOf(rows, shopId, only('applications'), reading));
  const named = [
    ...lots.map(({ product }) => product),
    ...applications.flatMap(({ products }) => products.map(({ product }) => product)),
  ];
  const products = mineOf(shopId, wanted === null ? null : new Set([...(wanted.get('products') ?? []), ...named]));
  await reading.pace?.pause();
  return {
    format: FORMAT,
    shop: settingsOf(shop),
    suppliers: await read('suppliers', async () => (await rows.supplier.findMany(of('suppliers').own)).map(supplierOf)),
    products: (await productsOf(rows, products)).map((one) => askedYesNo(one, 'name')),
    offers: await read('offers', () => offersOf(rows, of('offers'))),
    lots,
    benches: (await read('benches', () => benchesOf(rows, of('benches')))).map((one) => askedYesNo(one, 'name')),
    recipes: await read('recipes', () => recipesOf(rows, of('recipes'))),
    programs: await read('programs', () => programsOf(rows, of('programs'))),
    applications: applications.map((one) => askedYesNo(one, 'by')),
    orders: await read('orders', () => ordersOf(rows, of('orders'))),
  };
}

const NONE: ReadonlySet<string> = new Set();

/**
 * A whole shop out of its rows, as the shop file that the export writes. What cannot be read is left out, one thing at a
 * time, and noted beside the file: `unreadIn` tells it.
 *
 * Takes    how it is read
 * Gives    null when there is no such shop
 * Throws   ZodError when not even its settings can be read
 */
export async function shopFromRows(rows: Rows, shopId: string, reading: Reading = {}): Promise<ShopFile | null> {
  const raw = await rawShop(rows, shopId, null, reading);
  if (!raw) return null;
  const file = await (reading.pace ?? AT_ONCE).through(readInSteps(raw));
  const underWay = await underWayOf(rows, shopId, file);
  return underWay.length === 0 ? file : { ...file, underWay };
}

/** Which things of a list are read, and which rows belong to a thing of it by the name of the column. */
type Mine = ReturnType<typeof mineOf>;

const BY_POSITION = { position: 'asc' } as const;

function mineOf(shopId: string, only: ReadonlySet<string> | null) {
  // A query names only so many; of more, all are read.
  const ids = only === null || only.size > MOST_NAMED ? undefined : { in: [...only] };
  const owned = <Column extends string>(column: Column) =>
    ({ shopId, [column]: ids }) as { shopId: string } & Owned<Column>;
  return { own: { where: { shopId, id: ids }, orderBy: BY_POSITION }, owned };
}

type Owned<Column extends string> = { [Name in Column]: { in: string[] } | undefined };

type Row<T extends (...from: never[]) => unknown> = NonNullable<Awaited<ReturnType<T>>>;

/** Versions, the one that counts today last. */
const BY_NUMBER = { number: 'asc' } as const;

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
    sprayers: shop.sprayers,
    measures: shop.measures,
    dropMl: shop.dropMl,
    conductivityLimit: shop.conductivityLimit,
    safetyDays: shop.safetyDays,
    wagePerHour: moneyText(shop.wagePerHour),
    sameModeInARow: shop.sameModeInARow,
    capitalPerYear: shop.capitalPerYear,
    ...keepingOutOf(shop),
  };
}

const keepingOutOf = (shop: Row<Rows['shop']['findUnique']>) => ({
  minutesPerPlant: shop.minutesPerPlant,
  minutesPerBatch: shop.minutesPerBatch,
  specialDays: shop.specialDays,
  oilSulfurDays: shop.oilSulfurDays,
  monthlyHighsC: shop.monthlyHighsC,
  oilHotC: shop.oilHotC,
  keepRecordsYears: shop.keepRecordsYears,
  address: shop.address,
  contact: shop.contact,
  emergency: shop.emergency,
});

const supplierOf = (supplier: Row<Rows['supplier']['findUnique']>) => ({
  id: supplier.id,
  name: supplier.name,
  freightPerOrder: moneyText(supplier.freightPerOrder),
  freeFreightOver: moneyText(supplier.freeFreightOver),
  minimumOrder: moneyText(supplier.minimumOrder),
  workingDays: supplier.workingDays,
  closedOn: supplier.closedOn ?? [],
  archived: supplier.archivedAt !== null,
});

async function productsOf(rows: Rows, mine: Mine) {
  const products = await rows.product.findMany(mine.own);
  const parts = { where: mine.owned('productId'), orderBy: BY_POSITION };
  const contents = byOwner(await rows.content.findMany(parts), ({ productId }) => productId);
  const rates = byOwner(await rows.rate.findMany(parts), ({ productId }) => productId);
  return products.map((product) => ({
    id: product.id,
    name: product.name,
    kind: product.kind,
    form: product.form,
    formulation: product.formulation,
    densityGPerMl: product.densityGPerMl,
    gramsPerTeaspoon: product.gramsPerTeaspoon,
    contents: contents(product.id).map(({ substance, amount, basis }) => ({ substance, amount, basis })),
    label: {
      rates: rates(product.id).map(({ use, min, max }) => ({ use, min, max })),
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
      hotAboveC: product.hotAboveC,
      firstAid: product.firstAid,
      storage: product.storage,
    },
    shelfLife: { unopenedDays: product.unopenedDays, openedDays: product.openedDays },
    mixOrder: product.mixOrder,
    alkaliSilicate: product.alkaliSilicate,
    gtins: product.gtins,
    madeFrom: product.madeFrom,
    archived: product.archivedAt !== null,
  }));
}

const phRange = (min: number | null, max: number | null) => (min === null || max === null ? null : { min, max });

async function offersOf(rows: Rows, mine: Mine) {
  const offers = await rows.offer.findMany(mine.own);
  const where = mine.owned('offerId');
  const prices = byOwner(await rows.price.findMany({ where, orderBy: BY_NUMBER }), ({ offerId }) => offerId);
  const all = await rows.priceBreak.findMany({ where, orderBy: BY_POSITION });
  const breaks = byOwner(all, ({ offerId, number }) => keyOf(offerId, number));
  return offers.map(({ id, supplierId, productId, packText, leadDays, archivedAt }) => {
    const history = prices(id).map(({ number, price, sinceOn }) => ({
      since: sinceOn,
      price: moneyText(price),
      breaks: breaks(keyOf(id, number)).map(({ atLeast, price }) => ({ atLeast, price: moneyText(price) })),
    }));
    const ids = { id, supplier: supplierId, product: productId };
    return {
      ...ids,
      pack: packText,
      ...history.at(-1),
      leadDays,
      earlier: history.slice(0, -1),
      archived: archivedAt !== null,
    };
  });
}

async function benchesOf(rows: Rows, mine: Mine) {
  const benches = await rows.bench.findMany(mine.own);
  const groups = await rows.plantGroup.findMany({ where: mine.owned('benchId'), orderBy: BY_POSITION });
  const plants = byOwner(groups, ({ benchId }) => benchId);
  return benches.map(({ id, name, customers, enclosed, coverage, area, place, harvestOn }) => ({
    ...{ id, name, customers, enclosed, coverage, area, place, harvestOn },
    plants: plants(id).map(({ name, pot, count, mlPerPlant }) => ({ name, pot, count, mlPerPlant })),
  }));
}

async function recipesOf(rows: Rows, mine: Mine) {
  const recipes = await rows.recipe.findMany(mine.own);
  const where = mine.owned('recipeId');
  const said = await rows.recipeVersion.findMany({ where, orderBy: BY_NUMBER });
  const versions = newestByOwner(said, ({ recipeId }) => recipeId);
  const lines = await rows.ingredient.findMany({ where, orderBy: BY_POSITION });
  const ingredients = byOwner(lines, ({ recipeId, number }) => keyOf(recipeId, number));
  return recipes.map(({ id }) => {
    const today = versions(id);
    return {
      id,
      name: today?.name,
      targetPh: today?.targetPh,
      useWithinHours: today?.useWithinHours,
      ingredients: ingredients(keyOf(id, today?.number ?? 0)).map(({ productId, dose, use, order }) => ({
        product: productId,
        dose,
        use,
        order,
      })),
    };
  });
}

async function programsOf(rows: Rows, mine: Mine) {
  const programs = await rows.program.findMany(mine.own);
  const parts = { where: mine.owned('programId'), orderBy: BY_POSITION };
  const recipes = byOwner(await rows.programRecipe.findMany(parts), ({ programId }) => programId);
  const benches = byOwner(await rows.programBench.findMany(parts), ({ programId }) => programId);
  const changes = await changesOf(rows, mine);
  return programs.map((program) => ({
    id: program.id,
    recipes: recipes(program.id).map(({ recipeId }) => recipeId),
    benches: benches(program.id).map(({ benchId }) => benchId),
    startsOn: program.startsOn,
    endsOn: program.endsOn,
    repeat: program.repeat,
    startTime: showClockTime(program.startMinute),
    minutes: program.minutes,
    sprayer: program.sprayer,
    changes: changes(program.id),
  }));
}

/** What became of single sprayings, in the order of their days: of each the newest line. */
async function changesOf(rows: Rows, { owned }: Mine) {
  const where = owned('programId');
  const lines = await rows.sprayingChange.findMany({ where, orderBy: [{ plannedOn: 'asc' }, { number: 'asc' }] });
  const newest = new Map(lines.map((line) => [keyOf(line.programId, line.plannedOn), line]));
  const changes = byOwner([...newest.values()], ({ programId }) => programId);
  return (program: string) =>
    changes(program).map((line) => ({
      ...{ on: line.plannedOn, kind: line.kind, application: line.applicationId, movedTo: line.movedToOn },
      startTime: line.movedToMinute === null ? null : showClockTime(line.movedToMinute),
      reason: line.reason,
    }));
}
