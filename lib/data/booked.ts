import 'server-only';
import type { Booked } from '@/lib/engine/budget/spent';
import { byOwner, keyOf } from './by-owner';
import { database } from './database';
import { movementOf } from './movements';
import { toMicros, toStock } from './whole';

/** Every bottle that ever was, with its movements in the order in which they were recorded, from one read. */
export async function bookedIn(shopId: string): Promise<Booked[]> {
  const { reader } = await database();
  return reader.$transaction(async (rows) => {
    const where = { shopId };
    const lots = new Map((await rows.lot.findMany({ where })).map((lot) => [lot.id, lot]));
    const movements = await rows.movement.findMany({ where, orderBy: { number: 'asc' } });
    const ofSpot = byOwner(movements, ({ lotId, place }) => keyOf(lotId, place));
    const containers = await rows.container.findMany({ where });
    return containers.flatMap(({ lotId, place, paid }): Booked[] => {
      const lot = lots.get(lotId);
      if (!lot) return [];
      const its = ofSpot(keyOf(lotId, place));
      return [
        {
          ...{ lot: lotId, place, product: lot.productId, packText: lot.packText, size: toStock(lot.pack) },
          paid: paid === null ? null : toMicros(paid),
          movements: its.map(movementOf),
          gone: goneBefore(its),
          records: new Map(
            its.flatMap(({ id, applicationId }) => (applicationId === null ? [] : [[id, applicationId]])),
          ),
        },
      ];
    });
  });
}

type Row = { id: string; kind: string; commandId: string };

/** What was counted off a bottle in the command that put it on the shelf: it was gone before the books began. */
function goneBefore(its: readonly Row[]): ReadonlySet<string> {
  const [received] = its;
  const counted = its.filter(({ kind, commandId }) => kind === 'counted' && commandId === received?.commandId);
  return new Set(counted.map(({ id }) => id));
}
