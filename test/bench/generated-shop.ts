import type { ShopFile } from '@/shared/shop-file/contract';

/** How large a generated shop is. */
export type ShopSize = { products: number; programs: number; benches: number };

/** A repeatable stream of whole numbers below a bound: the same shop every time. */
function pickerFrom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48271) % 2147483647;
    return state % below;
  };
}

const WEEKDAYS = ['MO', 'TU', 'WE', 'TH', 'FR', 'SA', 'SU'];
const DOSES = ['5 mL/gal', '2 tsp/gal', '8 fl oz/100 gal', '0.5 %', '2.5 mL/L', '12 mL/gal'];
const PACKS = ['1 gal', '1 qt', '32 fl oz', '500 mL', '2.5 gal'];

/**
 * A whole shop of a given size, made up and repeatable: every product on two shelves' worth of bottles and two offers,
 * every program weekly with five ingredients on three benches.
 */
export function generatedShop(size: ShopSize): unknown {
  const pick = pickerFrom(20260302);
  const from = <T>(list: T[]): T => list[pick(list.length)] as T;
  const numbers = (count: number) => Array.from({ length: count }, (_, index) => index);
  const day = (month: number, date: number) =>
    `2026-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
  return {
    format: 'bench-and-bottle/shop@1',
    shop: {
      name: 'Generated',
      timeZone: 'America/New_York',
      currency: 'USD',
      units: 'us',
      openingHours: { tue: [['09:00', '18:00']], sat: [['09:00', '18:00']] },
      water: { alkalinityMgPerLCaCO3: 110, pH: 7.4 },
      fillCapacity: '4 gal',
      lossPerFill: '150 mL',
      measuringStep: '0.25 L',
      safetyDays: 3,
      wagePerHour: '18.00',
    },
    suppliers: numbers(10).map((id) => ({ id: `s${id}`, name: `Supplier ${id}`, freightPerOrder: '12.00' })),
    products: numbers(size.products).map((id) => ({
      id: `p${id}`,
      name: `Product ${id}`,
      kind: 'nutrient',
      form: 'liquid',
      formulation: 'SL',
      densityGPerMl: 1.1,
      contents: [{ substance: 'nitrogen', amount: 5 + pick(20), basis: '% w/w' }],
      label: {
        rates: [{ use: 'foliar', min: '1 mL/gal', max: '60 mL/gal' }],
        reiHours: [0, 4, 12, 24][pick(4)],
        maxApplicationsPerYear: 60,
        minDaysBetween: 3,
        modes: pick(3) ? [] : [`FRAC M${pick(9)}`],
      },
      shelfLife: { unopenedDays: 730, openedDays: 90 + pick(400) },
    })),
    offers: numbers(size.products * 2).map((id) => ({
      id: `o${id}`,
      supplier: `s${pick(10)}`,
      product: `p${id % size.products}`,
      pack: from(PACKS),
      price: `${20 + pick(300)}.00`,
      leadDays: 2 + pick(8),
    })),
    lots: numbers(size.products * 2).map((id) => ({
      id: `l${id}`,
      product: `p${id % size.products}`,
      pack: from(PACKS),
      count: 1 + pick(4),
      paid: `${30 + pick(300)}.00`,
      receivedOn: day(1 + pick(2), 1 + pick(28)),
      expiresOn: pick(3) ? `2027-0${1 + pick(9)}-15` : null,
    })),
    benches: numbers(size.benches).map((id) => ({
      id: `b${id}`,
      name: `Bench ${id}`,
      customers: id % 4 === 0,
      enclosed: true,
      plants: [{ name: 'plants', pot: '4 in', count: 40 + pick(200), mlPerPlant: 15 + pick(20) }],
    })),
    recipes: numbers(size.programs).map((id) => ({
      id: `r${id}`,
      name: `Recipe ${id}`,
      useWithinHours: 8,
      ingredients: numbers(5).map((turn) => ({
        product: `p${(id * 5 + turn * 7 + pick(3)) % size.products}`,
        dose: from(DOSES),
        use: 'foliar',
      })),
    })),
    programs: numbers(size.programs).map((id) => ({
      id: `g${id}`,
      recipes: [`r${id}`],
      benches: numbers(3).map((turn) => `b${(id * 3 + turn) % size.benches}`),
      startsOn: day(1, 1 + pick(28)),
      repeat: `FREQ=WEEKLY;BYDAY=${from(WEEKDAYS)}`,
      startTime: `${17 + pick(4)}:30`,
      minutes: 45,
    })),
    applications: [],
  } satisfies Partial<Record<keyof ShopFile, unknown>>;
}
