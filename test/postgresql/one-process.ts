import { changeShop } from '@/lib/commands/change-shop';
import { drawStock } from '@/lib/commands/draw-stock';
import { tellSpraying } from '@/lib/commands/tell-spraying';
import { database } from '@/lib/data/database';
import { stock } from '@/shared/quantity/amounts';
import { type Asked, CLOCK } from './mixed-commands';

/*
 * One process of the program without its pages: it does the commands that come in, and answers each. Ended by force, it
 * closes nothing.
 */

async function done({ kind, commandId, shopId }: Asked) {
  const sent = { commandId, shopId };
  const container = { ...sent, lot: 'l', place: 0 };
  const start = CLOCK.now();
  switch (kind) {
    case 'draw':
      return drawStock({ ...container, amount: stock(7_000), drawnAt: null }, CLOCK);
    case 'change':
      return changeShop({ ...sent, part: { suppliers: [{ id: 's', name: `Supplier ${commandId}` }] } }, CLOCK);
    case 'spray': {
      const what = { spraying: commandId, recipe: 'r', benches: ['b'], planned: null, by: null, passed: [] };
      return tellSpraying({ ...sent, ...what, startedAt: start, endedAt: start }, CLOCK);
    }
  }
}

process.on('message', async (asked: Asked) => {
  const outcome = await done(asked).catch((error: Error) => ({ ok: false as const, thrown: error.message }));
  process.send?.({ commandId: asked.commandId, outcome });
});
process.on('disconnect', () => process.exit(0));
await database();
process.send?.({ isReady: true });
