import { FORMAT, ShopFile, type WrittenShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';
import { BENCHES } from './benches';
import { historyBefore } from './history';
import { SUPPLIERS, supplierOffers } from './offers';
import { CROP_PROTECTION } from './products-against';
import { FEEDS_AND_HELPERS } from './products-for';
import { programsFrom, RECIPES } from './programs';
import { shelfOn } from './shelf';

/**
 * The demo shop: Quarry Lane Plants, a small nursery with a shop front, as it stands on the day somebody looks around.
 * The shop, its products and its suppliers are invented. It is mostly well run: one old recipe card that nobody has
 * looked at for years, two programs that get in each other's way, and a shelf where some things last and some do not.
 *
 * Takes   the day it is loaded; every date in it is counted from there, so that it is alive on any day
 * Gives   a whole shop file, the same one for the same day
 */
export function demoShop(today: Day): ShopFile {
  return ShopFile.parse({
    format: FORMAT,
    shop: SETTINGS,
    suppliers: SUPPLIERS,
    products: [...FEEDS_AND_HELPERS, ...CROP_PROTECTION],
    offers: supplierOffers(today),
    lots: shelfOn(today),
    benches: BENCHES,
    recipes: RECIPES,
    programs: programsFrom(today),
    applications: historyBefore(today),
  } satisfies WrittenShopFile);
}

const SETTINGS: WrittenShopFile['shop'] = {
  name: 'Quarry Lane Plants',
  timeZone: 'America/New_York',
  currency: 'USD',
  units: 'us',
  openingHours: {
    mon: [],
    tue: [['09:00', '18:00']],
    wed: [['09:00', '18:00']],
    thu: [['09:00', '18:00']],
    fri: [['09:00', '20:00']],
    sat: [['09:00', '18:00']],
    sun: [['10:00', '16:00']],
  },
  water: { alkalinityMgPerLCaCO3: 118, pH: 7.5 },
  fillCapacity: '2 gal',
  lossPerFill: '100 mL',
  measuringStep: '0.5 L',
  sprayers: [
    { name: 'backpack', capacity: '2 gal', lossPerFill: '100 mL', measuringStep: '0.5 L' },
    { name: 'hand sprayer', capacity: '1.5 L', lossPerFill: '20 mL', measuringStep: '50 mL' },
  ],
  measures: [
    { name: '1 mL syringe', holds: '1 mL', step: '0.05 mL' },
    { name: '10 mL syringe', holds: '10 mL', step: '0.5 mL' },
    { name: '100 mL cylinder', holds: '100 mL', step: '1 mL' },
    { name: 'level teaspoon', holds: '1 tsp', step: '1/4 tsp' },
    { name: 'kitchen scale', holds: '2 kg', step: '1 g' },
  ],
  conductivityLimit: 2.5,
  safetyDays: 3,
  wagePerHour: '18.50',
  sameModeInARow: 2,
  capitalPerYear: 0.08,
};
