import type { Written } from '@/shared/shop-file/contract';
import { addDays, type Day } from '@/shared/time/day';

/**
 * The benches as they stand on a day. The herbs are to be sold the day after the rotation comes back to what its label
 * wants longer before a sale.
 */
export const benchesOn = (today: Day): Written<'benches'>[] =>
  BENCHES.map((bench) => (bench.id === 'herb-trays' ? { ...bench, harvestOn: addDays(today, HERBS_SOLD_IN) } : bench));

/** The rotation was sprayed yesterday and comes every 14 days: its second turn from now is the one against thrips. */
const HERBS_SOLD_IN = 27;

/** Eight benches; customers walk along the first two. What a plant takes was measured by spraying to run-off. */
const BENCHES: Written<'benches'>[] = [
  {
    id: 'front-table',
    name: 'Front table',
    customers: true,
    enclosed: true,
    place: 'shop front, along the window',
    coverage: 1,
    plants: [
      { name: 'Kumquat', pot: '6 in', count: 48, mlPerPlant: 55 },
      { name: 'Calamondin', pot: '4 in', count: 36, mlPerPlant: 30 },
    ],
  },
  {
    id: 'fern-wall',
    name: 'Fern wall',
    customers: true,
    enclosed: true,
    place: 'shop front, shaded wall by the till',
    coverage: 1,
    plants: [
      { name: 'Maidenhair fern', pot: '4 in', count: 96, mlPerPlant: 28 },
      { name: 'Sword fern', pot: '6 in', count: 24, mlPerPlant: 45 },
    ],
  },
  {
    id: 'citrus-house',
    name: 'Citrus house',
    customers: false,
    enclosed: true,
    place: 'glasshouse 1, whole house',
    coverage: 1.1,
    plants: [
      { name: 'Lemon', pot: '6 in', count: 70, mlPerPlant: 50 },
      { name: 'Lime', pot: '6 in', count: 40, mlPerPlant: 50 },
      { name: 'Young mandarin', pot: '4 in', count: 36, mlPerPlant: 30 },
    ],
  },
  {
    id: 'herb-trays',
    name: 'Herb trays',
    customers: false,
    enclosed: true,
    place: 'glasshouse 2, west side',
    coverage: 1,
    plants: [
      { name: 'Basil', pot: '4 in', count: 120, mlPerPlant: 13 },
      { name: 'Rosemary', pot: '4 in', count: 60, mlPerPlant: 14 },
      { name: 'Thyme', pot: '3 in', count: 60, mlPerPlant: 8 },
    ],
  },
  {
    id: 'orchid-bench',
    name: 'Orchid bench',
    customers: false,
    enclosed: true,
    place: 'glasshouse 2, east side, shaded',
    coverage: 1,
    plants: [{ name: 'Moth orchid', pot: '5 in', count: 84, mlPerPlant: 24 }],
  },
  {
    id: 'succulent-shelf',
    name: 'Succulent shelf',
    customers: false,
    enclosed: true,
    place: 'glasshouse 3, south end',
    coverage: 1,
    plants: [
      { name: 'Echeveria', pot: '3 in', count: 90, mlPerPlant: 9 },
      { name: 'Aloe', pot: '4 in', count: 60, mlPerPlant: 12 },
    ],
  },
  {
    id: 'propagation-tent',
    name: 'Propagation tent',
    customers: false,
    enclosed: true,
    place: 'glasshouse 3, tent at the north end',
    coverage: 1,
    plants: [{ name: 'Rooted cuttings', pot: '2 in', count: 180, mlPerPlant: 8 }],
  },
  {
    id: 'yard',
    name: 'Yard',
    customers: false,
    enclosed: false,
    place: 'outdoors, behind glasshouse 1',
    coverage: 1,
    plants: [
      { name: 'Olive', pot: '2 gal', count: 24, mlPerPlant: 130 },
      { name: 'Bay laurel', pot: '2 gal', count: 16, mlPerPlant: 105 },
    ],
  },
];
