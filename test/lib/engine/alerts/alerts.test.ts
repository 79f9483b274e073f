import { expect, test } from 'vitest';
import { unrecordedSprayings } from '@/lib/engine/ahead/overdue';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import type { AlertKind } from '@/lib/engine/alerts/alert';
import { alertsOf } from '@/lib/engine/alerts/alerts';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import type { Shop } from '@/lib/engine/shop';
import type { Day } from '@/shared/time/day';
import { readInstant } from '@/shared/time/instant';
import { dayOf } from '@/shared/time/zone';
import { application, bench, type Fields, once, product, recipe, type SmallShop, smallShop } from '../rules/small-shop';

/** What is to be told of a shop at a moment, of one kind. */
function told(kind: AlertKind, parts: SmallShop, at: string, since: (shop: Shop) => void = () => {}) {
  const shop = smallShop(parts);
  since(shop);
  const now = readInstant(at);
  if (!now.ok) throw new Error(now.message);
  const plan = planAhead(shop, dayOf(shop.zone, now.value), 26);
  const benches = keepOut(shop, now.value, unrecordedSprayings(shop, now.value));
  return alertsOf(plan, benches, now.value).filter((alert) => alert.kind === kind);
}

const MONDAY = '2026-03-02T12:00:00Z';
const daily = once('g1', '2026-03-02', { repeat: 'FREQ=DAILY' });

/** A shop that takes 0.4 mL a day, with one bottle of it; an order comes within three working days. */
const ordering = (pack: string, rest: Partial<SmallShop> = {}): SmallShop => ({
  suppliers: [{ id: 's', name: 'Supplier' }],
  offers: [{ id: 'o', supplier: 's', product: 'p1', pack: '1 L', price: '40.00', leadDays: 3 }],
  lots: [{ id: 'l1', product: 'p1', pack, paid: '10.00', receivedOn: '2026-02-02' }],
  programs: [daily],
  ...rest,
});

test('a reorder is told in the week of its day and not before, and urgently when the day is past', () => {
  // 0.4 mL a day runs out on day n + 1 of n; three working days and the shop's safety days lie before that.
  expect(told('reorder', ordering('20 mL'), MONDAY)).toEqual([]);
  expect(told('reorder', ordering('3.6 mL'), MONDAY)).toMatchObject([
    {
      severity: 'note',
      sentence: expect.stringMatching(/^Order Product p1 by .*: it runs out on Wed 11 March\. .*1 L/),
    },
  ]);
  expect(told('reorder', ordering('0.4 mL'), MONDAY)).toMatchObject([
    { severity: 'warn', sentence: expect.stringContaining('Order Product p1 now: the last day for it was') },
  ]);
});

test('a reorder is one matter until something comes, and another one then', () => {
  const keys = (parts: SmallShop, at = MONDAY) => told('reorder', parts, at).map(({ key }) => key);
  const [first] = keys(ordering('3.6 mL'));
  expect(keys(ordering('3.6 mL'), '2026-03-03T12:00:00Z')).toEqual([first]);
  const lots = [
    { id: 'l1', product: 'p1', pack: '0.4 mL', paid: '10.00', receivedOn: '2026-02-02' },
    { id: 'l2', product: 'p1', pack: '0.8 mL', paid: '10.00', receivedOn: '2026-03-01' },
  ];
  expect(keys(ordering('', { lots }))).toHaveLength(1);
  expect(keys(ordering('', { lots }))).not.toEqual([first]);
});

test.each([
  ['on its way', { received: 1, expectedOn: null, closedOn: null }, 0],
  ['expected today', { received: 1, expectedOn: '2026-03-02' as Day, closedOn: null }, 0],
  ['overdue', { received: 1, expectedOn: '2026-03-01' as Day, closedOn: null }, 1],
  ['here already', { received: 2, expectedOn: null, closedOn: null }, 1],
  ['no longer expected', { received: 1, expectedOn: null, closedOn: '2026-03-01' as Day }, 1],
])('what was ordered and is %s is told of accordingly', (_, { received, expectedOn, closedOn }, times) => {
  const order = (shop: Shop) => {
    const [offer] = shop.offers;
    if (!offer) throw new Error('there is no offer');
    const lines = [{ offer, count: 2, received, price: null }];
    const placed = { id: 'x', supplier: offer.supplier, placedOn: '2026-03-01' as Day, expectedOn };
    shop.orders.push({ ...placed, lines, freight: null, note: null, closedOn });
  };
  expect(told('reorder', ordering('3.6 mL'), MONDAY, order)).toHaveLength(times);
});

test('what runs out while nobody can say when to order is told at once', () => {
  expect(told('reorder', ordering('20 mL', { offers: [] }), MONDAY)).toMatchObject([
    { severity: 'warn', sentence: expect.stringContaining('no offer says how long') },
  ]);
});

const bottle = (lastDay: string, rest: Fields = {}): SmallShop => ({
  lots: [
    { id: 'l1', product: 'p1', pack: '1 L', paid: '10.00', receivedOn: '2026-02-02', expiresOn: lastDay, ...rest },
  ],
});

test('a bottle is told of from a week before its last day on, when something will be left in it', () => {
  expect(told('bottle', bottle('2026-03-10'), MONDAY)).toEqual([]);
  expect(told('bottle', bottle('2026-03-09'), MONDAY)).toMatchObject([
    {
      severity: 'note',
      sentence: expect.stringContaining('the last usable day is Mon 9 March, and the plan leaves 1.00 L'),
    },
  ]);
  expect(told('bottle', bottle('2026-03-01'), MONDAY)).toMatchObject([
    { severity: 'warn', sentence: expect.stringContaining('Sun 1 March was the last usable day, and 1.00 L is left') },
  ]);
  const used = { ...bottle('2026-03-09', { pack: '0.4 mL' }), programs: [once('g1', '2026-03-05')] };
  expect(told('bottle', used, MONDAY)).toEqual([]);
});

test('the bottles of one lot that die together are one matter, and the same one on the next day', () => {
  const lot = bottle('2026-03-09', { count: 3 });
  const [alert, ...more] = told('bottle', lot, MONDAY);
  expect(more).toEqual([]);
  expect(alert?.sentence).toContain('3 containers of Product p1');
  expect(told('bottle', lot, '2026-03-10T12:00:00Z').map(({ key }) => key)).toEqual([alert?.key]);
});

const sprayed = (startedAt: string, endedAt: string | null, rest: Partial<SmallShop> = {}): SmallShop => ({
  products: [product('p1', { reiHours: 4 })],
  applications: [application('a1', startedAt, endedAt)],
  ...rest,
});

test('a bench is told of in the hour before its interval ends, as KEEP OUT, and never after it', () => {
  const shop = sprayed('2026-03-02T11:00:00Z', '2026-03-02T11:30:00Z');
  const at = (moment: string) => told('reopening', shop, moment).map(({ sentence }) => sentence);
  expect(at('2026-03-02T14:29:59Z')).toEqual([]);
  expect(at('2026-03-02T14:30:00Z')).toEqual([
    'KEEP OUT of Bench b1 until Mon 2 March 15:30, as recorded. Look at the board before anybody goes in.',
  ]);
  expect(at('2026-03-02T15:29:59.999Z')).toHaveLength(1);
  expect(at('2026-03-02T15:30:00Z')).toEqual([]);
});

test('an end that is put off is another matter', () => {
  const key = (endedAt: string) =>
    told('reopening', sprayed('2026-03-02T11:00:00Z', endedAt), '2026-03-02T15:00:00Z')[0]?.key;
  expect(key('2026-03-02T11:30:00Z')).toBeDefined();
  expect(key('2026-03-02T11:31:00Z')).not.toBe(key('2026-03-02T11:30:00Z'));
});

const openAt = (hours: [string, string][], rest: Partial<SmallShop> = {}): SmallShop => ({
  settings: { openingHours: { tue: hours } },
  benches: [bench('b1', { customers: true }), bench('b2')],
  products: [product('p1', { reiHours: 4 })],
  ...rest,
});
const both = { benches: ['b1', 'b2'] };

test('a customers’ bench that a record keeps closed at the next opening is told of, and no other bench', () => {
  const shop = (endedAt: string) =>
    openAt([['09:00', '18:00']], { applications: [application('a1', '2026-03-03T02:00:00Z', endedAt, both)] });
  const at = (endedAt: string) => told('closed-at-opening', shop(endedAt), '2026-03-03T06:00:00Z');
  expect(at('2026-03-03T05:00:00Z')).toEqual([]);
  expect(at('2026-03-03T05:01:00Z')).toMatchObject([
    {
      severity: 'warn',
      sentence:
        'Bench b1 is closed to customers when the shop opens, Tue 3 March 09:00: KEEP OUT until Tue 3 March 09:01.',
    },
  ]);
});

test('so is one that nobody knows of, and one that a planned spraying will close; an opening a day off is not yet', () => {
  const unknown = openAt([['09:00', '18:00']], {
    applications: [application('a1', '2026-03-01T02:00:00Z', null, both)],
  });
  expect(told('closed-at-opening', unknown, '2026-03-02T12:00:00Z')).toMatchObject([
    { sentence: expect.stringContaining('until when is not known: keep out') },
  ]);
  expect(told('closed-at-opening', unknown, '2026-03-02T08:59:00Z')).toEqual([]);
  const planned = openAt([['09:00', '18:00']], {
    programs: [once('g1', '2026-03-03', { startTime: '08:00', ...both })],
  });
  expect(told('closed-at-opening', planned, '2026-03-02T12:00:00Z')).toMatchObject([
    { sentence: expect.stringContaining('KEEP OUT until Tue 3 March 12:30') },
  ]);
  const early = openAt([['09:00', '18:00']], { programs: [once('g1', '2026-03-03', { startTime: '04:00', ...both })] });
  expect(told('closed-at-opening', early, '2026-03-02T12:00:00Z')).toEqual([]);
});

test('while the shop is open it is the same matter as before it opened', () => {
  const shop = openAt([['09:00', '18:00']], { applications: [application('a1', '2026-03-01T02:00:00Z', null, both)] });
  const key = (at: string) => told('closed-at-opening', shop, at).map((alert) => alert.key);
  expect(key('2026-03-03T17:59:00Z')).toEqual(key('2026-03-03T08:00:00Z'));
  expect(key('2026-03-03T18:00:00Z')).toEqual([]);
});

const limited = (days: string[], rest: Fields = {}): SmallShop => ({
  products: [product('p1', { maxApplicationsPerYear: 3 })],
  benches: [bench('b1'), bench('b2')],
  applications: days.map((on, index) => application(`a${index}`, `${on}T08:00:00Z`, `${on}T09:00:00Z`, rest)),
});

test('a label’s limit is told when one application is left, and when none is', () => {
  const at = (...days: string[]) => told('label-limit', limited(days), MONDAY);
  expect(at('2026-02-01')).toEqual([]);
  expect(at('2026-02-01', '2026-02-10')).toMatchObject([
    {
      severity: 'note',
      sentence: 'Bench b1 had 2 applications of Product p1 in 365 days; one is left by its label.',
    },
  ]);
  expect(at('2025-06-01', '2026-02-01', '2026-02-10')).toMatchObject([
    { severity: 'warn', sentence: expect.stringContaining('none is left until Mon 1 June, as far as the records go') },
  ]);
});

test('applications a year back count no more, and their leaving makes no new matter', () => {
  const days = ['2025-03-10', '2026-02-01', '2026-02-10'];
  const at = (moment: string) => told('label-limit', limited(days), moment);
  expect(at('2026-03-09T12:00:00Z')).toMatchObject([{ severity: 'warn' }]);
  expect(at('2026-03-10T12:00:00Z')).toMatchObject([{ severity: 'note' }]);
  expect(at('2026-03-10T12:00:00Z')[0]?.key).toBe(at('2026-03-09T12:00:00Z')[0]?.key);
});

test('benches of one spraying are one matter, and the next spraying is another', () => {
  const two = told('label-limit', limited(['2026-02-01', '2026-02-10'], both), MONDAY);
  expect(two).toHaveLength(1);
  expect(two[0]?.sentence).toContain('Bench b1 and Bench b2');
  const three = told('label-limit', limited(['2026-02-01', '2026-02-10', '2026-02-20'], both), MONDAY);
  expect(three[0]?.key).not.toBe(two[0]?.key);
});

test('a stock solution counts for what it is made from', () => {
  const shop: SmallShop = {
    products: [
      product('p1', { maxApplicationsPerYear: 2 }),
      product('p2', {}, { madeFrom: [{ product: 'p1', dose: '10 mL/L' }] }),
    ],
    recipes: [recipe('r1', 'p2')],
    applications: [application('a1', '2026-02-01T08:00:00Z', '2026-02-01T09:00:00Z')],
  };
  expect(told('label-limit', shop, MONDAY)).toMatchObject([{ sentence: expect.stringContaining('Product p1') }]);
});

test('nothing that is told calls a bench safe, and every key is another', () => {
  const shop = { ...sprayed('2026-03-02T11:00:00Z', '2026-03-02T11:30:00Z'), ...ordering('3.6 mL') };
  const all = (['reorder', 'bottle', 'reopening', 'closed-at-opening', 'label-limit'] as const).flatMap((kind) =>
    told(kind, shop, '2026-03-02T15:00:00Z'),
  );
  expect(JSON.stringify(all)).not.toMatch(/\bsafe/i);
  expect(new Set(all.map(({ key }) => key)).size).toBe(all.length);
});
