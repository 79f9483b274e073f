import { expect, test } from 'vitest';
import { mixCostWorking } from '@/lib/engine/working/mix-cost-figures';
import { mixAsked, mixSeen } from '@/lib/views/mix-screen';
import type { Pairs } from '@/shared/forms/mix-query';
import { workMinutesUp } from '@/shared/mix/work-minutes';
import { instantOf } from '@/shared/time/instant';
import { day, type Fields, once, smallShop } from '../rules/small-shop';

const TODAY = day('2026-03-02');
const NOW = instantOf(Date.UTC(2026, 2, 2, 12));
const PAID = { minutesPerPlant: 0.25, minutesPerBatch: 20, wagePerHour: '18.00' };

/** A mix that an address asks for. */
function mix(settings: Fields, pairs: Pairs) {
  const asked = mixAsked({ shop: smallShop({ settings, programs: [once('g1', '2026-03-03')] }), now: NOW }, pairs);
  if (!asked.ok) throw new Error(asked.message);
  return asked.value;
}

/** The figure of labour on its sheet. */
function labour(settings: Fields, ...pairs: Pairs) {
  const asked = mix(settings, pairs);
  const { shop } = asked;
  const ways = { units: shop.units, currency: shop.currency, zone: shop.zone, today: TODAY };
  return mixSeen({ id: 'here', shop, now: NOW, today: TODAY, ways }, asked, () => null).cost.labour;
}

const BENCH: Pairs = [
  ['recipe', 'r1'],
  ['bench', 'b1'],
];

test('work that no program planned is paid by its plants and its batch, and the working says so', () => {
  // Ten plants at a quarter of a minute and 20 for the batch are 22.5 minutes; at 18.00 an hour, 6.75.
  expect(labour(PAID, ...BENCH).value).toEqual({ kind: 'money', micros: 6_750_000 });
  const working = mixCostWorking(mix(PAID, BENCH), ['labour']);
  expect(working?.steps.map(({ label, value }) => [label, value])).toEqual([
    ['Minutes for each plant', { kind: 'count', value: 0.25, of: 'minutes' }],
    ['Plants', { kind: 'count', value: 10, of: 'plants' }],
    ['Minutes for the batch', { kind: 'count', value: 20, of: 'minutes' }],
    ['Wage per hour', { kind: 'money', micros: 18_000_000 }],
  ]);
  // Seven plants: 21.75 minutes.
  expect(labour(PAID, ['recipe', 'r1'], ['plants', 'b1/0/7']).value).toEqual({ kind: 'money', micros: 6_525_000 });
  // 21.1 minutes at 17.77 an hour come to 6.249116666…, rounded once.
  const odd = { minutesPerPlant: 0.1, minutesPerBatch: 20.1, wagePerHour: '17.77' };
  expect(labour(odd, ...BENCH).value).toEqual({ kind: 'money', micros: 6_249_117 });
});

test('a planned one is paid as its program has it, whatever a plant takes', () => {
  const planned: Pairs = [
    ['program', 'g1'],
    ['on', '2026-03-03'],
  ];
  // 30 minutes at 18.00.
  expect(labour(PAID, ...planned).value).toEqual({ kind: 'money', micros: 9_000_000 });
  expect(labour({ wagePerHour: '18.00' }, ...planned).value).toEqual({ kind: 'money', micros: 9_000_000 });
});

test.each([
  { lacks: 'minutesPerPlant', says: 'minutes for each plant' },
  { lacks: 'minutesPerBatch', says: 'minutes for each batch' },
  { lacks: 'wagePerHour', says: 'wage per hour' },
])('without $lacks it is unknown, and says what to enter', ({ lacks, says }) => {
  const value = labour({ ...PAID, [lacks]: null }, ...BENCH).value;
  expect(value).toEqual({ kind: 'unknown', because: expect.stringContaining(says) });
});

test('a volume alone does not say for how many plants; nothing an hour and no minutes are known, and cost nothing', () => {
  const value = labour(PAID, ['recipe', 'r1'], ['volume', '2 L']).value;
  expect(value).toMatchObject({ kind: 'unknown', because: expect.stringContaining('benches or plants') });
  expect(labour({ ...PAID, minutesPerPlant: 0, minutesPerBatch: 0 }, ...BENCH).value).toMatchObject({ micros: 0 });
});

test('the minutes that a program is offered are whole ones, rounded up', () => {
  const work = { minutesPerPlant: 0.25, minutesPerBatch: 20 };
  expect(workMinutesUp(work, 8)).toBe(22);
  expect(workMinutesUp(work, 9)).toBe(23);
  expect(workMinutesUp({ ...work, minutesPerBatch: null }, 9)).toBeNull();
});
