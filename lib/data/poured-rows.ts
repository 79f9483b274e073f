import 'server-only';
import { account } from '@/lib/engine/ledger/account';
import { rangeFrom } from '@/lib/engine/ledger/balance';
import { setTo, takeOut } from '@/lib/engine/ledger/decide';
import type { Poured } from '@/lib/engine/mix/as-poured';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { type Micros, micros, minus, plus, sum } from '@/shared/quantity/amounts';
import type { Instant } from '@/shared/time/instant';
import { dayOf, type Zone } from '@/shared/time/zone';
import { keyOf } from './by-owner';
import { type Changing, changeContainer } from './container-changes';
import type { Rows } from './database';
import { type ContainerStanding, containerAt, type Recording, recordMovements } from './movements';
import { newId } from './new-id';
import { toMicros } from './whole';
import type { Stamp } from './writer';

/** What a mix takes out of its bottles, decided and not yet written. */
export type Draws = { recordings: Recording[]; openings: Changing[]; cost: Micros | null };

type Bottle = ContainerStanding & { product: string; name: string; paid: Micros | null };
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
      const taken = takeFrom(bottle, wanted, at);
      if (!taken.ok) return taken;
      bottles.set(key, taken.value.after);
      recordings.push(...taken.value.recordings);
      costs.push(taken.value.cost);
      openings.push(...openingOf(bottle, at, zone));
    }
  }
  const known = costs.flatMap((cost) => (cost === null ? [] : [cost]));
  return accept({ recordings, openings: firstOfEach(openings), cost: known.length < costs.length ? null : sum(known) });
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

function takeFrom(bottle: Bottle, { amount, heldMore }: FromBottle, at: Instant) {
  const { lotId, place, paid } = bottle;
  let ledger = bottle.ledger;
  const recordings: Recording[] = [];
  const { now, least } = rangeFrom(ledger.movements, at);
  if (heldMore && amount > least) {
    const counted = setTo(ledger, plus(now, minus(amount, least)), { id: newId(), at });
    if (!counted.ok) return counted;
    if (counted.value) {
      recordings.push({
        lotId,
        place,
        movement: counted.value,
        reason: 'held more than the books said, found while mixing',
      });
      ledger = { ...ledger, movements: [...ledger.movements, counted.value] };
    }
  }
  const drawn = takeOut(ledger, 'spray', amount, { id: newId(), at });
  if (!drawn.ok) return drawn;
  recordings.push({ lotId, place, movement: drawn.value });
  ledger = { ...ledger, movements: [...ledger.movements, drawn.value] };
  const carried = paid === null ? null : account(paid, ledger.size, ledger.movements).carried.at(-1);
  return accept({
    recordings,
    after: { ...bottle, ledger },
    cost: carried?.cost ?? (paid === null ? null : micros(0)),
  });
}

function openingOf({ openedOn, lotId, place }: Bottle, at: Instant, zone: Zone): Changing[] {
  const drawnOn = dayOf(zone, at);
  if (openedOn !== null && drawnOn >= openedOn) return [];
  return [{ lotId, place, kind: 'opened', is: drawnOn, occurredAt: at, reason: 'drawn from' }];
}

/** A bottle that is drawn from twice is opened once. */
const firstOfEach = (openings: Changing[]): Changing[] => [
  ...new Map(openings.toReversed().map((opening) => [keyOf(opening.lotId, opening.place), opening])).values(),
];

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
