import { FORMAT, ShopFile, type WrittenShopFile } from '@/shared/shop-file/contract';
import { addDays, type Day } from '@/shared/time/day';
import { benchesOn } from './benches';
import { historyBefore } from './history';
import { SUPPLIERS, supplierOffers } from './offers';
import { ordersBefore } from './orders';
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
    shop: { ...SETTINGS, specialDays: specialDaysFrom(today) },
    suppliers: SUPPLIERS,
    products: [...FEEDS_AND_HELPERS, ...CROP_PROTECTION],
    offers: supplierOffers(today),
    lots: shelfOn(today),
    benches: benchesOn(today),
    recipes: RECIPES,
    programs: programsFrom(today),
    applications: historyBefore(today),
    orders: ordersBefore(today),
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
  minutesPerPlant: 0.12,
  minutesPerBatch: 12,
  sameModeInARow: 2,
  capitalPerYear: 0.08,
  // Under glass, with the vents open.
  monthlyHighsC: [20, 22, 27, 29, 32, 33, 35, 35, 32, 28, 22, 20],
  keepRecordsYears: 3,
  address: '12 Quarry Lane, Hollow Bridge',
  contact: 'Dana Whitlock, 555 0142',
  emergency: {
    contacts: [
      { name: 'Dana Whitlock, owner', phone: '555 0142' },
      { name: 'Emil Sarno, sprayer', phone: '555 0147' },
    ],
    medical: 'Bridge Street Clinic, 3 Bridge Street, Hollow Bridge, 555 0170',
    poisonLine: '555 0199',
  },
};

/** A day on which the shop stays shut, one on which it is open longer, and one of each later on. */
const specialDaysFrom = (today: Day): NonNullable<WrittenShopFile['shop']['specialDays']> => [
  { on: addDays(today, 9), name: 'Stock count', hours: [] },
  { on: addDays(today, 24), name: 'Plant fair', hours: [['08:00', '20:00']] },
  { on: addDays(today, 66), name: 'Family holiday', hours: [] },
  { on: addDays(today, 115), name: 'Open evening', hours: [['10:00', '21:00']] },
];
