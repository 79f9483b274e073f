import { expect, test } from 'vitest';
import { mixQueryText, type Pairs, readMixQuery } from '@/shared/forms/mix-query';

/** The short address of what an address or a form asks for; a refusal as its sentence. */
function short(...pairs: Pairs): string {
  const query = readMixQuery(pairs);
  return query.ok ? decodeURIComponent(mixQueryText(query.value)).replaceAll('+', ' ') : query.message;
}

test('a short address reads as itself', () => {
  for (const address of [
    'recipe=r&bench=a&bench=b',
    'recipe=r&plants=a/0/14&plants=b/2/3&area=12 m2',
    'recipe=r&bench=a&volume=2 gal&sprayer=1',
    'program=g&on=2026-03-03',
    'recipe=r&program=g&on=2026-03-03&plants=a/b/0/14',
  ]) {
    expect(short(...new URLSearchParams(address))).toBe(address);
  }
});

test('a form counts by what was chosen, and leaves the rest of what it sends aside', () => {
  const form: Pairs = [
    ['recipe', 'r'],
    ['bench', 'a'],
    ['count:a/0', '14'],
    ['count:a/1', ''],
    ['count:b/0', '0'],
    ['volume', '2 gal'],
    ['area', ''],
    ['sprayer', '0'],
  ];
  expect(short(...form, ['by', 'benches'])).toBe('recipe=r&bench=a');
  expect(short(...form, ['by', 'plants'])).toBe('recipe=r&plants=a/0/14');
  expect(short(...form, ['by', 'volume'])).toBe('recipe=r&bench=a&volume=2 gal');
});

test('a number of plants that is none is refused by its name', () => {
  expect(short(['recipe', 'r'], ['by', 'plants'], ['count:a/0', 'some'])).toContain('"some" is no number of plants');
  expect(short(['recipe', 'r'], ['by', 'plants'], ['count:a/0', '0'])).toContain('Count the plants');
  expect(short(['recipe', 'r'], ['by', 'volume'])).toContain('Write how much');
  expect(short(['program', 'g'])).toContain('its program and its day');
});
