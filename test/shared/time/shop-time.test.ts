import fc from 'fast-check';
import { expect, test } from 'vitest';
import { instantOf } from '@/shared/time/instant';
import { aheadAt, type Contact, isApart, shopTime, wasSet } from '@/shared/time/shop-time';
import { runs } from '@/test/runs';

const SHOP = Date.UTC(2026, 2, 31, 12);
const [MINUTE, HOUR, DAY] = [60_000, 3_600_000, 86_400_000];
/** Heard from the shop by a device whose clock is so far ahead of it. */
const contact = (ahead: number): Contact => ({ shop: instantOf(SHOP), wall: SHOP + ahead, steady: 500 });

test.each([
  { device: 'right', ahead: 0 },
  { device: 'a day ahead', ahead: DAY },
  { device: 'a day behind', ahead: -DAY },
])('a device whose clock is $device notes the time of the shop', ({ ahead }) => {
  expect(aheadAt(contact(ahead))).toBe(ahead);
  expect(shopTime(contact(ahead), { wall: SHOP + ahead + HOUR, steady: 500 + HOUR })).toBe(SHOP + HOUR);
});

test('a device that slept goes by its clock, one whose clock was set back by its count', () => {
  expect(shopTime(contact(DAY), { wall: SHOP + DAY + HOUR, steady: 500 + MINUTE })).toBe(SHOP + HOUR);
  expect(shopTime(contact(DAY), { wall: SHOP - DAY, steady: 500 + HOUR })).toBe(SHOP + HOUR);
});

test('without any contact the clock of the device is all there is', () => {
  expect(shopTime(null, { wall: SHOP + 0.5, steady: 0 })).toBe(SHOP + 1);
});

test('a minute between two clocks is told, and a clock that was set between two moments is found', () => {
  expect([MINUTE, MINUTE + 1, -MINUTE - 1].map(isApart)).toEqual([false, true, true]);
  expect(wasSet(DAY, DAY + 500)).toBe(false);
  expect(wasSet(DAY, 0)).toBe(true);
  expect(wasSet(null, 0)).toBe(false);
});

test('whatever becomes of the clock of a device, a time that it notes is never earlier than the shop had it', () => {
  const step = fc.record({
    pass: fc.integer({ min: 0, max: 8 * HOUR }),
    set: fc.constantFrom(0, 0, DAY, -DAY, 9 * MINUTE, -MINUTE),
    hears: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.integer({ min: -2 * DAY, max: 2 * DAY }), fc.array(step, { maxLength: 20 }), (first, steps) => {
      let [shop, wall, steady] = [SHOP, SHOP + first, 0];
      let last: Contact = { shop: instantOf(shop), wall, steady };
      for (const { pass, set, hears } of steps) {
        shop += pass;
        wall += pass + set;
        steady += pass;
        const noted = shopTime(last, { wall, steady });
        expect(noted).toBeGreaterThanOrEqual(shop);
        if (hears) last = { shop: instantOf(shop), wall, steady };
      }
      expect(shopTime({ ...last, shop: instantOf(shop), wall, steady }, { wall, steady })).toBe(shop);
    }),
    { numRuns: runs(200, 50_000) },
  );
});
