import type { Written } from '@/shared/shop-file/contract';
import { addDays, type Day } from '@/shared/time/day';

type Lot = Written<'lots'>;

/**
 * What stands on the shelf, with the empties that nobody threw out. What is left in each bottle is what the past year's
 * sprayings left in it, but for the calcium, some of which was spilled.
 */
export function shelfOn(today: Day): Written<'lots'>[] {
  const lot = (id: string, product: string, held: Held): Lot => ({
    id,
    product,
    pack: held.pack,
    count: held.count ?? 1,
    remaining: held.left ?? null,
    paid: held.paid,
    receivedOn: addDays(today, held.received),
    openedOn: held.opened === undefined ? null : addDays(today, held.opened),
    expiresOn: held.dies === undefined ? null : addDays(today, held.dies),
    keptIn: held.keptIn ?? 'spray cabinet',
    order: CAME_WITH[id]?.[0] ?? null,
    offer: CAME_WITH[id]?.[1] ?? null,
  });
  return [...feedLots(lot), ...againstLots(lot)];
}

/** Days are counted from today: −30 is thirty days ago. */
type Held = {
  pack: string;
  paid: string;
  received: number;
  opened?: number;
  dies?: number;
  left?: string;
  count?: number;
  keptIn?: string;
};
/** The order that a lot came with, and the offer of it. */
const CAME_WITH: Record<string, [order: string, offer: string]> = {
  'silicate-b': ['order-silicate', 'hollow-silicate-8-1-pt'],
  'oil-b': ['order-oil-and-copper', 'hollow-light-oil-98-1-qt'],
  'oil-c': ['order-oil', 'hollow-light-oil-98-1-pt'],
  'spinosad-b': ['order-spinosad', 'north-yard-spinosad-half-4-fl-oz'],
  'copper-a': ['order-oil-and-copper', 'hollow-copper-soap-1-pt'],
};

type MakeLot = (id: string, product: string, held: Held) => Lot;

const feedLots = (lot: MakeLot): Lot[] => [
  // Opened too long ago: still standing there, no longer calcium to count on.
  lot('calcium-a', 'calcium-5', { pack: '1 qt', paid: '23.50', received: -372, opened: -364, left: '104 mL' }),
  lot('calcium-b', 'calcium-5', { pack: '1 pt', paid: '14.00', received: -126, opened: -119, left: '36 mL' }),
  lot('iron-a', 'iron-chelate-6', { pack: '1 lb', paid: '21.40', received: -370, opened: -364, left: '416 g' }),
  lot('seaweed-a', 'seaweed-extract', { pack: '1 qt', paid: '19.75', received: -366, opened: -364, left: '540 mL' }),
  lot('silicate-a', 'silicate-8', { pack: '1 qt', paid: '17.90', received: -300, opened: -296, left: '0 mL' }),
  lot('silicate-b', 'silicate-8', {
    pack: '1 pt',
    paid: '11.20',
    received: -31,
    opened: -10,
    dies: 690,
    left: '469 mL',
  }),
  lot('silicate-c', 'silicate-26', { pack: '1 pt', paid: '33.50', received: -120, count: 2 }),
  lot('spreader-a', 'spreader-80', { pack: '8 fl oz', paid: '12.60', received: -402, opened: -396, left: '206 mL' }),
  lot('citric-a', 'citric-acid', { pack: '1 lb', paid: '8.95', received: -380, opened: -351, left: '444 g' }),
  lot('phosphoric-a', 'phosphoric-25', { pack: '1 qt', paid: '15.25', received: -388, opened: -380, left: '710 mL' }),
];

const againstLots = (lot: MakeLot): Lot[] => [
  lot('oil-a', 'light-oil-98', { pack: '1 qt', paid: '19.50', received: -203, opened: -197, left: '0 mL' }),
  lot('oil-b', 'light-oil-98', { pack: '1 qt', paid: '19.50', received: -96, opened: -70, left: '269 mL' }),
  lot('oil-c', 'light-oil-98', { pack: '1 pt', paid: '12.40', received: -12, dies: 610 }),
  lot('oil-80-a', 'light-oil-80', { pack: '1 gal', paid: '44.00', received: -75, opened: -59, left: '3.4 L' }),
  lot('bicarbonate-a', 'bicarbonate', { pack: '1 lb', paid: '13.80', received: -204, opened: -197, left: '0 g' }),
  lot('bicarbonate-b', 'bicarbonate', { pack: '8 oz', paid: '8.60', received: -45, opened: -29, left: '146 g' }),
  lot('spinosad-a', 'spinosad-half', { pack: '1 pt', paid: '27.00', received: -360, opened: -351, left: '0 mL' }),
  lot('spinosad-b', 'spinosad-half', {
    pack: '4 fl oz',
    paid: '11.80',
    received: -22,
    opened: -15,
    dies: 540,
    left: '45 mL',
  }),
  // Four weeks are left to use it in, and the rotation comes round to it in six.
  lot('neem-a', 'neem-extract', { pack: '8 fl oz', paid: '58.00', received: -344, opened: -337, left: '155 mL' }),
  lot('soap-a', 'soap-49', { pack: '1 pt', paid: '12.30', received: -345, opened: -337, left: '68 mL' }),
  // Ordered, and on its way.
  lot('soap-b', 'soap-49', { pack: '1 qt', paid: '18.90', received: 6 }),
  // Bought for last summer's caterpillars; no program calls for it now.
  lot('bt-a', 'bt-liquid', { pack: '1 qt', paid: '31.00', received: -148, opened: -140, left: '590 mL' }),
  lot('copper-a', 'copper-soap', {
    pack: '1 pt',
    paid: '22.75',
    received: -75,
    opened: -59,
    dies: 420,
    left: '450 mL',
  }),
  lot('sulfur-a', 'wettable-sulfur', {
    pack: '5 lb',
    paid: '14.00',
    received: -700,
    opened: -640,
    left: '3 lb',
    keptIn: 'potting shed',
  }),
];
