import { expect, test } from 'vitest';
import { overdueSprayings, unrecordedSprayings } from '@/lib/engine/ahead/overdue';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import type { Written } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { readInstant } from '@/shared/time/instant';
import { parsedOrThrow } from '../../data/any-shop-file';

/* One day in UTC, 2026-03-10, with an interval of an hour: which record is which planned spraying. */

const DAY = '2026-03-10';
const at = (clock: string, day = DAY) => `${day}T${clock}:00Z`;
const moment = (text: string) => {
  const read = readInstant(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};

type Program = Partial<Written<'programs'>>;
type Record = Partial<Written<'applications'>>;

const turn = (id: string, startTime: string, rest: Program = {}): Written<'programs'> => ({
  ...{ id, recipes: ['r'], benches: ['b'], startsOn: DAY, startTime, minutes: 30 },
  ...rest,
});
const record = (id: string, from: string, to: string, rest: Record = {}): Written<'applications'> => ({
  ...{ id, recipe: 'r', benches: ['b'], startedAt: at(from), endedAt: at(to) },
  ...rest,
});
const done = (application: string | null, rest: object = {}) => ({
  changes: [{ on: DAY, kind: 'done' as const, application, ...rest }],
});

const shopWith = (programs: Written<'programs'>[], applications: Written<'applications'>[]) =>
  shopOfFile(
    parsedOrThrow({
      format: 'bench-and-bottle/shop@1',
      shop: { name: 'A shop', timeZone: 'UTC', currency: 'USD', fillCapacity: '2 gal' },
      products: [{ id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid', label: { reiHours: 1 } }],
      benches: ['b', 'c', 'd'].map((id) => ({ id, name: id })),
      recipes: ['r', 's'].map((id) => ({ id, name: id, ingredients: [{ product: 'p', dose: '12 mL/gal' }] })),
      ...{ programs, applications },
    }),
  );

/** The states of benches b and c at a time of the day. */
const states = (programs: Written<'programs'>[], applications: Written<'applications'>[], clock: string, day = DAY) => {
  const shop = shopWith(programs, applications);
  const now = moment(at(clock, day));
  return keepOut(shop, now, unrecordedSprayings(shop, now))
    .slice(0, 2)
    .map(({ state }) => state);
};

const EVENING = turn('g', '18:00');
const BOTH = turn('g', '18:00', { benches: ['b', 'c'] });

test('a record of the morning is not the spraying of the evening: at 18:10 the bench is kept out of', () => {
  const morning = record('a', '07:00', '07:20');
  expect(states([EVENING], [morning], '17:59')).toEqual(['open', 'open']);
  expect(states([EVENING], [morning], '18:10')).toEqual(['unknown', 'open']);
  expect(states([turn('early', '07:00'), EVENING], [morning], '18:10')).toEqual(['unknown', 'open']);
  expect(states([turn('early', '07:00', done('a')), EVENING], [morning], '18:10')).toEqual(['unknown', 'open']);
});

test('a record from an hour before the planned start to a day after it is that turn, and none beyond', () => {
  const from = (clock: string, day = DAY) => {
    const startedAt = at(clock, day);
    const one = { ...record('a', '00:00', '00:00'), startedAt, endedAt: startedAt };
    return states([EVENING], [one], '23:00', '2026-03-11')[0];
  };
  expect([from('16:59'), from('17:00'), from('18:00', '2026-03-11'), from('18:01', '2026-03-11')]).toEqual([
    'unknown',
    'open',
    'open',
    'unknown',
  ]);
});

test('one record is one turn: the nearest in time', () => {
  const two = [turn('g', '18:00'), turn('h', '18:30')];
  expect(states(two, [record('a', '18:05', '18:20')], '20:00')).toEqual(['unknown', 'open']);
  expect(states(two, [record('a', '18:05', '18:20'), record('z', '18:25', '18:40')], '20:00')).toEqual([
    'open',
    'open',
  ]);
  // Both are nearest to the first, so the second turn has none.
  expect(states(two, [record('a', '18:05', '18:10'), record('z', '18:11', '18:14')], '20:00')).toEqual([
    'unknown',
    'open',
  ]);
});

test('a record near a turn that was skipped is not the next turn', () => {
  const skipped = turn('g', '18:00', { changes: [{ on: DAY, kind: 'skipped', reason: 'rain' }] });
  expect(states([skipped, turn('h', '18:30')], [record('a', '18:05', '18:20')], '20:00')).toEqual(['unknown', 'open']);
});

test('a turn of several benches stays open on those that no record names', () => {
  expect(states([BOTH], [record('a', '18:00', '18:30')], '20:00')).toEqual(['open', 'unknown']);
  const rest = record('z', '18:40', '18:50', { benches: ['c'] });
  expect(states([BOTH], [record('a', '18:00', '18:30'), rest], '20:00')).toEqual(['open', 'open']);
});

test('a turn that is done covers the benches of its record, and all once a reason says why the others were left out', () => {
  const part = [record('a', '18:00', '18:30')];
  expect(states([turn('g', '18:00', { benches: ['b', 'c'], ...done('a') })], part, '20:00')).toEqual([
    'open',
    'unknown',
  ]);
  const told = done('a', { reason: 'c was in bloom' });
  expect(states([turn('g', '18:00', { benches: ['b', 'c'], ...told })], part, '20:00')).toEqual(['open', 'open']);
  expect(states([turn('g', '18:00', { benches: ['b', 'c'], ...done(null) })], [], '20:00')).toEqual(['open', 'open']);
});

test('a record that is used up by its turn is no other turn', () => {
  const two = [turn('g', '17:30', done('a')), turn('h', '18:00')];
  expect(states(two, [record('a', '18:00', '18:20')], '20:00')).toEqual(['unknown', 'open']);
});

test('an extra mix is no planned spraying', () => {
  expect(states([EVENING], [record('a', '18:00', '18:20', { extra: true })], '20:00')).toEqual(['unknown', 'open']);
});

test('a record of another recipe, or one that was withdrawn, is no turn of this one', () => {
  expect(states([EVENING], [record('a', '18:00', '18:20', { recipe: 's' })], '20:00')).toEqual(['unknown', 'open']);
  expect(states([EVENING], [record('a', '18:00', '18:20', { withdrawn: true })], '20:00')).toEqual(['unknown', 'open']);
});

test('what was missed names the benches that are still open', () => {
  const missed = overdueSprayings(shopWith([BOTH], [record('a', '18:00', '18:30')]), Day.parse('2026-03-11'));
  expect(missed.map(({ date, open }) => [date, open.map(({ id }) => id)])).toEqual([[DAY, ['c']]]);
});
