import 'server-only';
import { FORMAT, ShopFile } from '@/shared/shop-file/contract';
import { showClockTime } from '@/shared/time/clock-time';
import { applicationsOf } from './application-rows';
import { byOwner, keyOf, newestByOwner } from './by-owner';
import type { Rows } from './database';
import { lotsOf } from './lot-rows';
import { ordersOf } from './order-rows';
import { moneyText } from './saving';

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
  const products = await productsOf(rows, mine);
  return ShopFile.parse({
    format: FORMAT,
    shop: settingsOf(shop),
    suppliers: (await rows.supplier.findMany(mine)).map(supplierOf),
    products,
    offers: await offersOf(rows, mine),
    lots: await lotsOf(rows, shopId),
    benches: await benchesOf(rows, mine),
    recipes: await recipesOf(rows, mine),
    programs: await programsOf(rows, mine),
    applications: await applicationsOf(rows, shopId, products),
    orders: await ordersOf(rows, mine),
  });
}

type Mine = { where: { shopId: string }; orderBy: { position: 'asc' } };
type Row<T extends (...from: never[]) => unknown> = NonNullable<Awaited<ReturnType<T>>>;

/** Versions, the one that counts today last. */
const versionsOf = ({ where }: Mine) => ({ where, orderBy: { number: 'asc' } }) as const;

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
  const products = await rows.product.findMany(mine);
  const contents = byOwner(await rows.content.findMany(mine), ({ productId }) => productId);
  const rates = byOwner(await rows.rate.findMany(mine), ({ productId }) => productId);
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
  const offers = await rows.offer.findMany(mine);
  const prices = byOwner(await rows.price.findMany(versionsOf(mine)), ({ offerId }) => offerId);
  const breaks = byOwner(await rows.priceBreak.findMany(mine), ({ offerId, number }) => keyOf(offerId, number));
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
  const benches = await rows.bench.findMany(mine);
  const plants = byOwner(await rows.plantGroup.findMany(mine), ({ benchId }) => benchId);
  return benches.map(({ id, name, customers, enclosed, coverage, area, place, harvestOn }) => ({
    ...{ id, name, customers, enclosed, coverage, area, place, harvestOn },
    plants: plants(id).map(({ name, pot, count, mlPerPlant }) => ({ name, pot, count, mlPerPlant })),
  }));
}

async function recipesOf(rows: Rows, mine: Mine) {
  const recipes = await rows.recipe.findMany(mine);
  const versions = newestByOwner(await rows.recipeVersion.findMany(versionsOf(mine)), ({ recipeId }) => recipeId);
  const ingredients = byOwner(await rows.ingredient.findMany(mine), ({ recipeId, number }) => keyOf(recipeId, number));
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
  const programs = await rows.program.findMany(mine);
  const recipes = byOwner(await rows.programRecipe.findMany(mine), ({ programId }) => programId);
  const benches = byOwner(await rows.programBench.findMany(mine), ({ programId }) => programId);
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
async function changesOf(rows: Rows, { where }: Mine) {
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
