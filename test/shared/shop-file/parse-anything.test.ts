import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type ParsedShopFile, parseShopFile } from '@/shared/shop-file/parse';
import { pathText } from '@/shared/shop-file/path';
import { runs } from '@/test/runs';
import { changed, type Json, type Path, placesIn, smallShop, valueAt } from './small-shop';

const parse = (file: Json) => parseShopFile(JSON.stringify(file));
const pathsOf = (parsed: ParsedShopFile) => (parsed.ok ? [] : parsed.faults.map(({ path }) => path));

const whole = smallShop();
const text = JSON.stringify(whole);
const places = placesIn(whole);
const leaves = places.filter((path) => typeof valueAt(whole, path) !== 'object' && valueAt(whole, path) !== undefined);
const objects = places.filter((path) => {
  const value = valueAt(whole, path);
  return typeof value === 'object' && value !== null && !Array.isArray(value);
});
const anyOf = (some: Path[]) => fc.constantFrom(...some);

test('no text at all brings the reader down', () => {
  const texts = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.json(),
    fc.tuple(fc.nat(), fc.nat(12), fc.string({ maxLength: 6 })).map(([at, length, put]) => {
      const place = at % text.length;
      return text.slice(0, place) + put + text.slice(place + length);
    }),
  );
  fc.assert(
    fc.property(texts, (typed) => {
      const parsed = parseShopFile(typed);
      if (!parsed.ok) expect(parsed.faults.length).toBeGreaterThan(0);
    }),
    { numRuns: runs(800, 10_000) },
  );
});

test('whatever stands anywhere in a shop, the reader answers, and says nothing twice', () => {
  fc.assert(
    fc.property(anyOf(places), fc.jsonValue(), (path, value) => {
      const parsed = parse(changed(whole, path, JSON.parse(JSON.stringify(value))));
      if (parsed.ok) return;
      const said = parsed.faults.map((fault) => JSON.stringify(fault));
      expect(new Set(said).size).toBe(said.length);
      for (const { message } of parsed.faults) expect(message).toMatch(/^.*[.?]$/u);
    }),
    { numRuns: runs(500, 10_000) },
  );
});

test('a value of the wrong kind is told at its very place', () => {
  fc.assert(
    fc.property(anyOf(leaves), fc.constantFrom<Json>({}, []), (path, wrong) => {
      expect(pathsOf(parse(changed(whole, path, wrong)))).toContain(pathText(path));
    }),
    { numRuns: runs(250, 5_000) },
  );
});

test('a field that nobody knows is told at its very place, wherever it stands', () => {
  const names = fc.stringMatching(/^[a-z]{1,12}_[a-z]{0,3}$/);
  fc.assert(
    fc.property(anyOf(objects), names, (path, name) => {
      expect(pathsOf(parse(changed(whole, [...path, name], 1)))).toEqual([pathText([...path, name])]);
    }),
    { numRuns: runs(250, 5_000) },
  );
});

test('a number that is not finite, or beyond any sense, is told at its very place', () => {
  const numbers = leaves.filter((path) => typeof valueAt(whole, path) === 'number');
  fc.assert(
    fc.property(anyOf(numbers), fc.constantFrom('1e999', '-1e999', '1e15', '-0.5'), (path, written) => {
      const spoiled = JSON.stringify(changed(whole, path, 'HERE')).replace('"HERE"', written);
      expect(pathsOf(parseShopFile(spoiled))).toContain(pathText(path));
    }),
    { numRuns: runs(250, 5_000) },
  );
});

test('a field may be left out exactly where it may be null', () => {
  const fields = places.filter((path) => typeof path.at(-1) === 'string');
  for (const path of fields) {
    const missing = pathsOf(parse(changed(whole, path, undefined)));
    const empty = pathsOf(parse(changed(whole, path, null)));
    expect(missing).toEqual(empty);
  }
});

test('a shop that was read and written is read as the same shop', () => {
  fc.assert(
    fc.property(fc.uniqueArray(anyOf(places), { maxLength: 6 }), (taken) => {
      const file = taken.reduce(
        (left, path) => (valueAt(left, path) === undefined ? left : changed(left, path, undefined)),
        whole,
      );
      const parsed = parse(file);
      if (!parsed.ok) return;
      expect(parseShopFile(JSON.stringify(parsed.file))).toEqual(parsed);
    }),
    { numRuns: runs(250, 5_000) },
  );
});
