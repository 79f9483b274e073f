import { FORMAT, type ShopFile } from '@/shared/shop-file/contract';
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
  return {
    format: FORMAT,
    shop: SETTINGS,
    suppliers: SUPPLIERS,
    products: [...FEEDS_AND_HELPERS, ...CROP_PROTECTION],
    offers: supplierOffers(),
    lots: shelfOn(today),
    benches: BENCHES,
    recipes: RECIPES,
    programs: programsFrom(today),
    applications: historyBefore(today),
  };
}

const SETTINGS: ShopFile['shop'] = {
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
  safetyDays: 3,
  wagePerHour: '18.50',
  sameModeInARow: 2,
  capitalPerYear: 0.08,
};
