import { expect, test } from 'vitest';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import type { Application, Shop } from '@/lib/engine/shop';
import { type Instant, readInstant } from '@/shared/time/instant';
import { application, product, smallShop } from '../rules/small-shop';

/*
 * Values that should not be where they are, in every field that decides who may stand where. Sprayed from 18:00 to 18:30
 * under twelve hours; asked at 20:00, when it is closed, and a year later, when it is long open. Nothing that is damaged
 * may open the bench sooner: it stays shut, or nothing is answered at all, which the pages show as keep out.
 */

const GARBAGE: unknown[] = [
  undefined,
  Number.NaN,
  Infinity,
  -Infinity,
  -1,
  0.5,
  1e300,
  '',
  'x',
  '2026-03-02T18:00:00Z',
  {},
  [],
  true,
];

const at = (text: string): Instant => {
  const reading = readInstant(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};
const SOON = at('2026-03-02T20:00:00Z');
const LATER = at('2027-03-02T20:00:00Z');

const shop = smallShop({
  products: [product('p1', { reiHours: 12 })],
  applications: [application('a1', '2026-03-02T18:00:00Z', '2026-03-02T18:30:00Z')],
});
const withRecord = (change: (record: Application) => object): Shop => ({
  ...shop,
  applications: shop.applications.map((record) => ({ ...record, ...change(record) })),
});
const withLabel = (rei: unknown): Shop =>
  withRecord(({ recipe }) => ({
    recipe: {
      ...recipe,
      ingredients: recipe.ingredients.map((line) => ({
        ...line,
        product: { ...line.product, label: { ...line.product.label, rei } },
      })),
    },
  }));

/** What the board would show: keep out as well where no answer comes. */
function shown(damaged: Shop, now: Instant): string {
  try {
    return keepOut(damaged, now)[0]?.state ?? 'no bench';
  } catch {
    return 'no answer';
  }
}

const FIELDS: [field: string, damage: (value: unknown) => Shop][] = [
  ['startedAt', (startedAt) => withRecord(() => ({ startedAt }))],
  ['endedAt', (endedAt) => withRecord(() => ({ endedAt }))],
  ['recordedRei', (recordedRei) => withRecord(() => ({ recordedRei }))],
  ['closedUntil', (closedUntil) => withRecord(() => ({ closedUntil }))],
  ['recipe', (recipe) => withRecord(() => ({ recipe }))],
  ['benches', (benches) => withRecord(() => ({ benches }))],
  ['label.rei', withLabel],
];

test('undamaged, it is closed at first and open a year later', () => {
  expect([shown(shop, SOON), shown(shop, LATER)]).toEqual(['closed', 'open']);
});

test.each(FIELDS)('no garbage in %s opens the bench, then or ever', (_, damage) => {
  for (const value of GARBAGE) {
    for (const now of [SOON, LATER]) expect([value, shown(damage(value), now)]).not.toEqual([value, 'open']);
  }
});

test.each([undefined, null, 'yes', 1, {}])('only the word of the record withdraws it, not %s', (withdrawn) => {
  expect(
    shown(
      withRecord(() => ({ withdrawn })),
      SOON,
    ),
  ).toBe('closed');
});

test.each([
  { field: 'endedAt', value: null },
  { field: 'startedAt', value: null },
])('a missing $field keeps people out for good', ({ field, value }) => {
  expect(
    shown(
      withRecord(() => ({ [field]: value })),
      LATER,
    ),
  ).toBe('unknown');
});

test('a bench that something unread may have closed is unknown, and so is every bench at a moment that is none', () => {
  const nobodyKnows = { state: 'unknown', until: null, because: [], unrecorded: [] };
  const states = (of: Shop, now: unknown) => keepOut(of, now as Instant).map(({ bench: _, ...state }) => state);
  const unread = { ...shop, unreadBenches: new Set(shop.benches.map(({ id }) => id)) };
  expect(states(unread, LATER)).toEqual([nobodyKnows]);
  expect(keepOut(unread, LATER)[0]?.bench).toBe(shop.benches[0]);
  expect(states(shop, Number.NaN)).toEqual([nobodyKnows]);
});
