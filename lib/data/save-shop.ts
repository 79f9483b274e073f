import 'server-only';
import { keptStarts } from '@/lib/engine/ahead/kept-starts';
import { COLLECTIONS, type Comparison } from '@/lib/engine/exchange/compare';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { Prisma } from '@/prisma/generated/client';
import type { ShopFile } from '@/shared/shop-file/contract';
import { showClockTime } from '@/shared/time/clock-time';
import type { Day } from '@/shared/time/day';
import { Zone } from '@/shared/time/zone';
import type { Rows } from './database';
import { saveBenches, savePrograms } from './save-benches';
import { recordChanges, saveChanges } from './save-changes';
import { saveOffers, saveProducts, saveSuppliers } from './save-goods';
import { saveLots } from './save-lots';
import { saveOrders } from './save-orders';
import { saveRecipes } from './save-recipes';
import { saveApplications } from './save-records';
import { type Saving, storedMoney } from './saving';
import { shopInWrite } from './shop-in-write';
import { saveUnderWay } from './under-way';
import { real, realOrNull, small } from './whole';
import type { Stamp } from './writer';

/** A shop that is to be made: its id, whether it is the demo, and the day on which it is made. */
export type NewShop = { isDemo: boolean; createdOn: Day };

/** Make a shop with its settings and nothing in it. */
export async function createShop(rows: Rows, stamp: Stamp, shop: NewShop, settings: ShopFile['shop']): Promise<void> {
  stamp.touched.add('shop');
  await rows.shop.create({ data: { ...shop, id: stamp.shopId, ...settingsRow(settings) } });
}

/**
 * Save what a file adds to a shop or changes in it.
 *
 * Takes    the file in its plain form, what comparing it with the shop gave, without a fault, and why, for the ledgers
 */
export async function saveShop(
  rows: Rows,
  stamp: Stamp,
  file: ShopFile,
  comparison: Comparison,
  reason = 'said by an import',
): Promise<void> {
  const { shopId } = stamp;
  const { collections, settings } = comparison;
  noteTouched(stamp, comparison);
  if (settings.some(({ field }) => field === 'timeZone')) await keepStarts(rows, stamp, file.shop.timeZone);
  if (settings.length > 0) await rows.shop.update({ where: { id: shopId }, data: settingsRow(file.shop) });
  await saveSuppliers(rows, stamp, toSave(file.suppliers, collections.suppliers));
  await saveProducts(rows, stamp, toSave(file.products, collections.products));
  await saveOffers(rows, stamp, toSave(file.offers, collections.offers));
  // A lot names the order that it came with.
  await saveOrders(rows, shopId, toSave(file.orders, collections.orders));
  await saveLots(rows, stamp, { file, reason }, toSave(file.lots, collections.lots));
  await saveBenches(rows, shopId, toSave(file.benches, collections.benches));
  await saveRecipes(rows, stamp, toSave(file.recipes, collections.recipes));
  const programs = toSave(file.programs, collections.programs);
  await savePrograms(rows, shopId, programs);
  await saveApplications(rows, stamp, file, toSave(file.applications, collections.applications));
  // A spraying that is done names its record, which comes first.
  await saveChanges(rows, stamp, programs);
  await saveUnderWay(rows, stamp, file.underWay ?? []);
}

/** In another zone the clock on the wall shows another time, and what has begun stays where it is. */
async function keepStarts(rows: Rows, stamp: Stamp, timeZone: string): Promise<void> {
  const before = await shopInWrite(rows, stamp.shopId);
  if (!before) return;
  const kept = keptStarts(shopOfFile(before), Zone.parse(timeZone), stamp.recordedAt);
  const changes = kept.map(({ program, change: { startMinute, ...change } }) => ({
    program,
    change: { ...change, startTime: showClockTime(startMinute) },
  }));
  await recordChanges(rows, stamp, changes);
}

/** Lots and records note themselves: in the database a part of a lot stands under the lot that came in. */
function noteTouched({ touched }: Stamp, { collections, settings }: Comparison): void {
  if (settings.length > 0) touched.add('shop');
  for (const list of COLLECTIONS) {
    if (list === 'lots' || list === 'applications') continue;
    const { added, changed } = collections[list];
    touched.add(
      list,
      [...added, ...changed].map(({ id }) => id),
    );
  }
}

/** What is new goes after what the shop already has, in the order of the file. */
function toSave<T extends { id: string }>(items: T[], change: Comparison['collections']['lots']): Saving<T>[] {
  const added = new Map(change.added.map(({ id }, place) => [id, place]));
  const changed = new Set(change.changed.map(({ id }) => id));
  const first = change.changed.length + change.unchanged.length + change.leftAlone.length;
  return items.flatMap((item): Saving<T>[] => {
    const place = added.get(item.id);
    if (place !== undefined) return [{ item, position: first + place, isNew: true }];
    return changed.has(item.id) ? [{ item, position: 0, isNew: false }] : [];
  });
}

function settingsRow(shop: ShopFile['shop']) {
  const { water, wagePerHour, openingHours } = shop;
  return {
    name: shop.name,
    timeZone: shop.timeZone,
    currency: shop.currency,
    units: shop.units,
    openingHours,
    alkalinityMgPerLCaCO3: realOrNull(water?.alkalinityMgPerLCaCO3 ?? null),
    waterPh: realOrNull(water?.pH ?? null),
    fillCapacity: shop.fillCapacity,
    lossPerFill: shop.lossPerFill,
    measuringStep: shop.measuringStep,
    sprayers: shop.sprayers,
    measures: shop.measures,
    dropMl: real(shop.dropMl),
    conductivityLimit: realOrNull(shop.conductivityLimit),
    safetyDays: small(shop.safetyDays),
    wagePerHour: storedMoney(wagePerHour),
    sameModeInARow: small(shop.sameModeInARow),
    capitalPerYear: real(shop.capitalPerYear),
    ...keepingOutRow(shop),
  };
}

const keepingOutRow = (shop: ShopFile['shop']) => ({
  minutesPerPlant: realOrNull(shop.minutesPerPlant),
  minutesPerBatch: realOrNull(shop.minutesPerBatch),
  specialDays: shop.specialDays,
  oilSulfurDays: small(shop.oilSulfurDays),
  // Left out, a change would leave what stood there.
  monthlyHighsC: shop.monthlyHighsC ?? Prisma.DbNull,
  oilHotC: real(shop.oilHotC),
  keepRecordsYears: small(shop.keepRecordsYears),
  address: shop.address,
  contact: shop.contact,
  emergency: shop.emergency,
});
