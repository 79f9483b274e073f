import fc from 'fast-check';
import type { ShopFile } from '@/shared/shop-file/contract';
import { day, doseOf, maybe, sizeOf, tidyMoney, word } from './any-fields';

/* What was ordered and what was sprayed, at random. */

export const order = fc.record({
  id: fc.constant('q0'),
  supplier: fc.constant('s0'),
  placedOn: day,
  expectedOn: maybe(day),
  lines: fc.array(
    fc.record({ offer: fc.constant('o0'), count: fc.integer({ min: 1, max: 9 }), price: maybe(tidyMoney) }),
    { maxLength: 2 },
  ),
  freight: maybe(tidyMoney),
  note: maybe(word),
  closedOn: maybe(day),
});

export const applicationOf = (benchIds: string[], { id: product, form }: ShopFile['products'][number]) =>
  fc.record({
    id: fc.constant('a0'),
    recipe: fc.constant('r0'),
    benches: fc.shuffledSubarray(benchIds, { minLength: 1 }),
    startedAt: fc.constantFrom('2026-02-24T22:30:00Z', '2026-02-24T23:30:00.125+01:00'),
    endedAt: maybe(fc.constant('2026-02-25T00:10:00+01:00')),
    by: maybe(word),
    products: fc.array(
      fc.record({
        product: fc.constant(product),
        dose: doseOf(form),
        amount: maybe(sizeOf(form)),
        reiMinutes: maybe(fc.nat(3_000)),
        name: maybe(word),
        registration: maybe(word),
        actives: maybe(word),
      }),
      { maxLength: 2 },
    ),
    sprayed: maybe(fc.constantFrom('2 gal', '0.5 L')),
    leftover: maybe(fc.constant('120 mL')),
    leftoverWent: maybe(word),
    conditions: maybe(word),
    pH: maybe(fc.constantFrom(5.8, 6.25)),
    acid: maybe(sizeOf(form).map((amount) => ({ product, amount }))),
    passed: fc.constantFrom([], [{ rule: 'short', reason: 'there was a bottle that nobody had entered' }]),
    plannedCost: maybe(tidyMoney),
    cost: maybe(tidyMoney),
    plants: maybe(word),
    mixedAt: maybe(fc.constant('2026-02-24T22:10:00Z')),
    temperatureC: maybe(fc.constantFrom(-2, 24.5)),
    crop: maybe(word),
    location: maybe(word),
    closedUntil: maybe(fc.constant('2026-02-26T00:00:00Z')),
    withdrawn: fc.boolean(),
    extra: fc.boolean(),
  });
