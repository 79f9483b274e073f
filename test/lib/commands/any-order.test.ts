import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countContainer } from '@/lib/commands/count-container';
import { discardStock } from '@/lib/commands/discard-stock';
import { drawStock } from '@/lib/commands/draw-stock';
import { receiveLot } from '@/lib/commands/receive-lot';
import { reverseMovement } from '@/lib/commands/reverse-movement';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { stock } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { CLOCK } from '../data/fresh-database';
import { smallShop, today } from './small-shop';

/** Small amounts against a bottle of 500 mL, so that about half of the commands are refused. */
const deed = fc.record({
  kind: fc.constantFrom('draw' as const, 'draw' as const, 'discard' as const, 'count' as const, 'reverse' as const),
  millilitres: fc.nat(400).map((n) => n + 1),
  hour: fc.integer({ min: 1, max: 8 }),
  repeats: fc.integer({ min: 1, max: 3 }),
});
type Deed = typeof deed extends fc.Arbitrary<infer T> ? T : never;

async function send(bottle: Bottle, { kind, millilitres, hour }: Deed, commandId: string, lines: string[]) {
  const { shopId } = bottle;
  const at = { commandId, ...bottle, place: 0 };
  const amount = stock(millilitres * 1_000);
  switch (kind) {
    case 'draw':
      return drawStock({ ...at, amount, drawnAt: today(hour) }, CLOCK);
    case 'discard':
      return discardStock({ ...at, amount, discardedAt: today(hour), reason: 'spoiled' }, CLOCK);
    case 'count':
      return countContainer({ ...at, found: amount, countedAt: today(hour), reason: null }, CLOCK);
    case 'reverse':
      return reverseMovement(
        { commandId, shopId, movement: lines[millilitres % lines.length] ?? '', reason: 'x' },
        CLOCK,
      );
  }
}

type Bottle = { shopId: string; lot: string };

const linesOf = async ({ shopId, lot }: Bottle) => {
  const { reader } = await database();
  return reader.movement.findMany({ where: { shopId, lotId: lot }, orderBy: { number: 'asc' } });
};

/** A bottle of 500 mL of its own, so that every run begins with a full one. */
async function newBottle(shopId: string): Promise<Bottle> {
  const received = {
    product: 'p',
    pack: '500 mL',
    count: 1,
    paid: null,
    receivedOn: Day.parse('2026-03-30'),
    expiresOn: null,
    keptIn: null,
  };
  const outcome = await receiveLot({ commandId: newId(), shopId, ...received }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return { shopId, lot: outcome.value.lot };
}

/** Do a deed, sent so many times at once, and give what its bottle holds then, in µL, after checking its lines. */
async function doAndCheck(bottle: Bottle, one: Deed): Promise<bigint> {
  const before = await linesOf(bottle);
  const id = newId();
  const ids = before.map((line) => line.id);
  const answers = await Promise.all(Array.from({ length: one.repeats }, () => send(bottle, one, id, ids)));
  expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
  const after = await linesOf(bottle);
  const moved = answers[0]?.ok === true && answers[0].value.movement !== null;
  expect(after.length).toBe(before.length + (moved ? 1 : 0));
  expect(after.slice(0, before.length)).toEqual(before);
  const left = after.reduce((sum, { toSide, amount }) => sum + (toSide === 'container' ? amount : -amount), 0n);
  expect(left).toBeGreaterThanOrEqual(0n);
  return left;
}

test('commands in any order, each sent up to three times at once, leave a bottle that its lines add up to', {
  timeout: 480_000,
}, async () => {
  const shopId = await smallShop();
  const left = new Map<string, bigint>();
  await fc.assert(
    fc.asyncProperty(fc.array(deed, { minLength: 1, maxLength: 6 }), async (deeds) => {
      const bottle = await newBottle(shopId);
      for (const one of deeds) left.set(bottle.lot, await doAndCheck(bottle, one));
    }),
    { numRuns: 1_000 },
  );
  // And the shop tells of each bottle what its lines add up to.
  const { lots } = await shopFileOf(shopId);
  const told = lots.filter(({ id }) => left.has(id)).map(({ id, remaining }) => [id, remaining ?? '500 mL']);
  expect(Object.fromEntries(told)).toEqual(
    Object.fromEntries([...left].map(([id, amount]) => [id, `${Number(amount) / 1_000} mL`])),
  );
});
