import type { Written } from '@/shared/shop-file/contract';
import { addDays, type Day } from '@/shared/time/day';

/**
 * What was ordered in the past year and is on its way now, as far as somebody wrote it down: one that came late, one that
 * came in two parts, one that was dearer than quoted, one that should be here already, and one that was placed this week.
 * What came of them stands on the shelf.
 */
export const ordersBefore = (today: Day): Written<'orders'>[] => [...doneBefore(today), ...stillOpen(today)];

const doneBefore = (today: Day): Written<'orders'>[] => [
  {
    id: 'order-oil-and-copper',
    supplier: 'hollow',
    placedOn: addDays(today, -103),
    lines: [
      { offer: 'hollow-light-oil-98-1-qt', count: 1, price: '19.50' },
      { offer: 'hollow-copper-soap-1-pt', count: 1, price: '22.75' },
    ],
    note: 'They were out of copper; it came three weeks after the oil.',
    closedOn: addDays(today, -75),
  },
  {
    id: 'order-silicate',
    supplier: 'hollow',
    placedOn: addDays(today, -45),
    lines: [{ offer: 'hollow-silicate-8-1-pt', count: 1, price: '11.20' }],
    closedOn: addDays(today, -31),
  },
  {
    id: 'order-spinosad',
    supplier: 'north-yard',
    placedOn: addDays(today, -27),
    lines: [{ offer: 'north-yard-spinosad-half-4-fl-oz', count: 1, price: '11.20' }],
    closedOn: addDays(today, -22),
  },
  {
    id: 'order-oil',
    supplier: 'hollow',
    placedOn: addDays(today, -19),
    lines: [{ offer: 'hollow-light-oil-98-1-pt', count: 1, price: '11.90' }],
    closedOn: addDays(today, -12),
  },
];

const stillOpen = (today: Day): Written<'orders'>[] => [
  {
    id: 'order-iron',
    supplier: 'north-yard',
    placedOn: addDays(today, -13),
    lines: [{ offer: 'north-yard-iron-chelate-6-1-lb', count: 1, price: '21.40' }],
    note: 'Asked after it by phone.',
  },
  {
    id: 'order-calcium',
    supplier: 'hollow',
    placedOn: addDays(today, -1),
    lines: [
      { offer: 'hollow-calcium-5-1-qt', count: 2, price: '23.50' },
      { offer: 'hollow-seaweed-extract-1-qt', count: 1, price: '19.75' },
    ],
  },
];
