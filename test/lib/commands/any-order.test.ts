import fc from 'fast-check';
import { expect, test } from 'vitest';
import { countContainer } from '@/lib/commands/count-container';
import { discardStock } from '@/lib/commands/discard-stock';
import { drawStock } from '@/lib/commands/draw-stock';
import { reverseMovement } from '@/lib/commands/reverse-movement';
import { database } from '@/lib/data/database';
import { newId } from '@/lib/data/new-id';
import { stock } from '@/shared/quantity/amounts';
import { CLOCK } from '../data/fresh-database';
import { lotOf, smallShop, today } from './small-shop';

/** Small amounts against a bottle of 500 mL, so that about half of the commands are refused. */
const deed = fc.record({
  kind: fc.constantFrom('draw' as const, 'draw' as const, 'discard' as const, 'count' as const, 'reverse' as const),
  millilitres: fc.nat(400).map((n) => n + 1),
  hour: fc.integer({ min: 1, max: 8 }),
  repeats: fc.integer({ min: 1, max: 3 }),
});
type Deed = typeof deed extends fc.Arbitrary<infer T> ? T : never;

async function send(shopId: string, { kind, millilitres, hour }: Deed, commandId: string, lines: string[]) {
  const at = { commandId, shopId, lot: 'l', place: 0 };
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

const linesOf = async (shopId: string) => {
  const { reader } = await database();
  return reader.movement.findMany({ where: { shopId, lotId: 'l' }, orderBy: { number: 'asc' } });
};

test('commands in any order, each sent up to three times at once, leave a bottle that its lines add up to', {
  timeout: 240_000,
}, async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(deed, { minLength: 1, maxLength: 15 }), async (deeds) => {
      const shopId = await smallShop();
      for (const one of deeds) {
        const before = await linesOf(shopId);
        const id = newId();
        const ids = before.map((line) => line.id);
        const answers = await Promise.all(Array.from({ length: one.repeats }, () => send(shopId, one, id, ids)));
        expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
        const after = await linesOf(shopId);
        const moved = answers[0]?.ok === true && answers[0].value.movement !== null;
        expect(after.length).toBe(before.length + (moved ? 1 : 0));
        expect(after.slice(0, before.length)).toEqual(before);
        const left = after.reduce((sum, { toSide, amount }) => sum + (toSide === 'container' ? amount : -amount), 0n);
        expect(left).toBeGreaterThanOrEqual(0n);
        const told = (await lotOf(shopId, 'l')).remaining;
        expect(told ?? '500 mL').toBe(`${Number(left) / 1_000} mL`);
      }
    }),
    { numRuns: 12 },
  );
});
