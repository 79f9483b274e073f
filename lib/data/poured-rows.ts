import 'server-only';
import type { Poured } from '@/lib/engine/mix/as-poured';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { type Micros, sum } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';
import type { Zone } from '@/shared/time/zone';
import { keyOf } from './by-owner';
import { type Changing, changeContainer } from './container-changes';
import type { Rows } from './database';
import { decideDraw, type PaidContainer } from './draw-from';
import { containerAt, type Recording, recordMovements } from './movements';
import { toMicros } from './whole';
import type { Stamp } from './writer';

/** What a mix takes out of its bottles, decided and not yet written. */
export type Draws = { recordings: Recording[]; openings: Changing[]; cost: Micros | null };

type Bottle = PaidContainer & { product: string; name: string };
type FromBottle = Poured['from'][number];

/**
 * Decide what comes out of which bottle, in the order it was poured. A bottle that held more than the books say is first
 * counted up by what was missing in them.
 *
 * Gives    the movements, the openings, and what all of it cost as drawn; null as soon as a price is unknown, or something
 *          came from a bottle that is not in the books
 * Refuses  'not-found' for a bottle, or one of another product; 'not-enough-stock'; 'more-than-it-holds'; 'before-received'
 */
export async function drawsOf(
  rows: Rows,
  shopId: string,
  zone: Zone,
  poured: readonly Poured[],
  at: Instant,
): Promise<Outcome<Draws>> {
  const bottles = new Map<string, Bottle>();
  const recordings: Recording[] = [];
  const openings: Changing[] = [];
  const costs: (Micros | null)[] = [];
  for (const { product, from, elsewhere } of poured) {
    if (elsewhere > 0) costs.push(null);
    for (const wanted of from) {
      const key = keyOf(wanted.lotId, wanted.place);
      const bottle = bottles.get(key) ?? (await bottleAt(rows, shopId, wanted));
      if (!bottle) return noBottle(wanted);
      if (bottle.product !== product.id) return otherProduct(bottle, product.name);
      const { amount, heldMore, ranOut = false } = wanted;
      const drawn = decideDraw(bottle, { amount, heldMore, ranOut, at }, zone);
      if (!drawn.ok) return drawn;
      bottles.set(key, drawn.value.after);
      recordings.push(...drawn.value.recordings);
      costs.push(drawn.value.cost);
      if (drawn.value.opening) openings.push(drawn.value.opening);
    }
  }
  const known = costs.flatMap((cost) => (cost === null ? [] : [cost]));
  return accept({ recordings, openings, cost: known.length < costs.length ? null : sum(known) });
}

/** Write what was decided, each movement with the record that it belongs to. */
export async function writeDraws(rows: Rows, stamp: Stamp, draws: Draws, applicationId: string): Promise<void> {
  for (const opening of draws.openings) await changeContainer(rows, stamp, opening);
  await recordMovements(
    rows,
    stamp,
    draws.recordings.map((recording) => ({ ...recording, applicationId })),
  );
}

async function bottleAt(rows: Rows, shopId: string, { lotId, place }: FromBottle): Promise<Bottle | null> {
  const standing = await containerAt(rows, shopId, { lotId, place });
  if (!standing) return null;
  const container = await rows.container.findUniqueOrThrow({
    where: { shopId_lotId_place: { shopId, lotId, place } },
    select: { paid: true, lot: { select: { product: { select: { id: true, name: true } } } } },
  });
  const { id: product, name } = container.lot.product;
  return { ...standing, product, name, paid: container.paid === null ? null : toMicros(container.paid) };
}

const noBottle = ({ lotId, place }: FromBottle): Outcome<never> =>
  refuse({ code: 'not-found', what: 'bottle', id: `${lotId}, number ${place + 1}` });

const otherProduct = ({ lotId, place, name }: Bottle, wanted: string): Outcome<never> =>
  refuse({
    code: 'faults',
    faults: [
      {
        path: 'poured',
        message: `Bottle ${lotId}, number ${place + 1}, holds ${name} and not ${wanted}. Scan the bottle once more.`,
      },
    ],
  });
