import type { Written } from '@/shared/shop-file/contract';
import { addDays, type Day } from '@/shared/time/day';

const WEEK = ['mon', 'tue', 'wed', 'thu', 'fri'] as const;

/** Three invented suppliers. */
export const SUPPLIERS: Written<'suppliers'>[] = [
  {
    id: 'hollow',
    name: 'Hollow Supply',
    freightPerOrder: '12.00',
    freeFreightOver: '150.00',
    minimumOrder: '0',
    workingDays: [...WEEK],
  },
  {
    id: 'millrace',
    name: 'Millrace Grower Stores',
    freightPerOrder: '18.50',
    freeFreightOver: '300.00',
    minimumOrder: '40.00',
    workingDays: [...WEEK],
  },
  {
    id: 'north-yard',
    name: 'North Yard Sundries',
    freightPerOrder: '8.75',
    freeFreightOver: null,
    minimumOrder: '0',
    workingDays: ['tue', 'wed', 'thu', 'fri', 'sat'],
  },
];

type Break = NonNullable<Written<'offers'>['breaks']>[number];
type Pack = [pack: string, price: string, ...breaks: Break[]];

const from = (atLeast: number, price: string): Break => ({ atLeast, price });

/** What each supplier sells: a bigger pack is cheaper per unit, and where two sell the same, the nearer is dearer. */
export const supplierOffers = (today: Day): Written<'offers'>[] =>
  [...fromHollow(), ...fromMillrace(), ...fromNorthYard()].map((offer) => ({ ...offer, ...pricesUntil(today, offer) }));

/** Most has cost the same since somebody first wrote it down; these have not. Days before today, and what it cost then. */
const DEARER_SINCE: Record<string, { now: number; before: [daysAgo: number, price: string][] }> = {
  'hollow-calcium-5-1-qt': {
    now: -64,
    before: [
      [-690, '21.00'],
      [-372, '22.40'],
    ],
  },
  'hollow-calcium-5-1-gal': {
    now: -64,
    before: [
      [-690, '63.00'],
      [-372, '67.50'],
    ],
  },
  'millrace-neem-extract-8-fl-oz': {
    now: -118,
    before: [
      [-640, '49.00'],
      [-344, '54.50'],
      [-210, '61.00'],
    ],
  },
  'millrace-spinosad-half-1-pt': {
    now: -30,
    before: [
      [-600, '24.20'],
      [-360, '27.00'],
    ],
  },
  'north-yard-bicarbonate-1-lb': { now: -204, before: [[-410, '12.90']] },
};

function pricesUntil(today: Day, { id }: Written<'offers'>) {
  const { now = -400, before = [] } = DEARER_SINCE[id] ?? {};
  const earlier = before.map(([daysAgo, price]) => ({ since: addDays(today, daysAgo), price }));
  return { since: addDays(today, now), earlier };
}

const fromHollow = () => [
  ...packs('hollow', 5, 'calcium-5', ['1 qt', '23.50'], ['1 gal', '71.00', from(2, '66.50')]),
  ...packs('hollow', 5, 'seaweed-extract', ['1 qt', '19.75'], ['1 gal', '58.00']),
  ...packs('hollow', 5, 'silicate-8', ['1 pt', '11.20'], ['1 qt', '17.90'], ['1 gal', '49.00', from(4, '45.00')]),
  ...packs('hollow', 5, 'light-oil-98', ['1 pt', '12.40'], ['1 qt', '19.50', from(6, '18.00')], ['1 gal', '54.00']),
  ...packs('hollow', 5, 'soap-49', ['1 pt', '12.30'], ['1 qt', '18.90'], ['1 gal', '52.00']),
  ...packs('hollow', 5, 'copper-soap', ['1 pt', '22.75'], ['1 qt', '38.00']),
  ...packs('hollow', 5, 'citric-acid', ['1 lb', '8.95'], ['5 lb', '29.00']),
];

const fromMillrace = () => [
  ...packs('millrace', 7, 'spinosad-half', ['1 pt', '26.00'], ['1 gal', '149.00']),
  ...packs('millrace', 7, 'spinosad-12', ['8 fl oz', '94.00'], ['1 qt', '318.00', from(2, '299.00')]),
  ...packs('millrace', 7, 'neem-extract', ['8 fl oz', '58.00'], ['1 qt', '196.00']),
  ...packs('millrace', 7, 'light-oil-80', ['1 gal', '44.00'], ['2.5 gal', '96.00']),
  ...packs('millrace', 7, 'silicate-26', ['1 pt', '16.75'], ['1 gal', '92.00']),
  ...packs('millrace', 7, 'bt-liquid', ['1 qt', '31.00'], ['1 gal', '102.00']),
  ...packs('millrace', 7, 'phosphoric-25', ['1 qt', '15.25'], ['1 gal', '41.00']),
  ...packs('millrace', 7, 'wettable-sulfur', ['5 lb', '16.50'], ['25 lb', '58.00']),
];

const fromNorthYard = () => [
  ...packs('north-yard', 3, 'calcium-5', ['1 pt', '14.00']),
  ...packs('north-yard', 4, 'bicarbonate', ['8 oz', '8.60'], ['1 lb', '13.80'], ['5 lb', '52.00', from(2, '48.00')]),
  ...packs('north-yard', 3, 'spinosad-half', ['4 fl oz', '11.80']),
  ...packs('north-yard', 3, 'iron-chelate-6', ['1 lb', '21.40']),
  ...packs('north-yard', 3, 'spreader-80', ['8 fl oz', '12.60'], ['1 qt', '37.00']),
  ...packs('north-yard', 3, 'light-oil-98', ['1 qt', '21.00']),
];

const packs = (supplier: string, leadDays: number, product: string, ...list: Pack[]): Written<'offers'>[] =>
  list.map(([pack, price, ...breaks]) => ({
    id: [supplier, product, pack].join('-').replaceAll(' ', '-'),
    supplier,
    product,
    pack,
    price,
    breaks,
    leadDays,
  }));
