import 'server-only';
import { packOf } from '@/lib/engine/exchange/pack-of';
import { receipt, setTo } from '@/lib/engine/ledger/decide';
import { readMoney } from '@/shared/measure/money';
import type { Micros, Stock } from '@/shared/quantity/amounts';
import { shareOut } from '@/shared/quantity/rounding';
import type { ShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import { atClock, Zone } from '@/shared/time/zone';
import { type ChangeKind, changeContainer, noteOpened } from './container-changes';
import type { Rows } from './database';
import { insertMany } from './insert-many';
import { type StandingLot, standingLots } from './lot-rows';
import { type ContainerAt, type ContainerStanding, containersOf, type Recording, recordMovements } from './movements';
import { newId } from './new-id';
import { parsed, type Saving } from './saving';
import { small, toStored, toStoredOrNull } from './whole';
import type { Stamp } from './writer';

type FileLot = ShopFile['lots'][number];

/** A lot as it comes in: its containers are full, but for what a file says is already gone from the one. */
export type ReceivedLot = {
  id: string;
  position: number;
  productId: string;
  packText: string;
  size: Stock;
  form: 'liquid' | 'powder';
  count: number;
  remaining: Stock;
  paid: Micros | null;
  receivedOn: Day;
  openedOn: Day | null;
  expiresOn: Day | null;
  keptIn: string | null;
  /** The order and the offer of it that it came with. */
  order: string | null;
  offer: string | null;
};

/** Save the lots that a file brings, and what it says of those that the shop has. */
export async function saveLots(
  rows: Rows,
  stamp: Stamp,
  { file, reason }: { file: ShopFile; reason: string },
  saving: Saving<FileLot>[],
): Promise<void> {
  const zone = Zone.parse(file.shop.timeZone);
  const products = new Map(file.products.map((product) => [product.id, product]));
  const first = await rows.lot.count({ where: { shopId: stamp.shopId } });
  const fresh = saving.filter(({ isNew }) => isNew);
  await receiveLots(
    rows,
    stamp,
    zone,
    fresh.map(({ item }, place) => receivedLot(item, products, first + place)),
  );
  const changed = saving.filter(({ isNew }) => !isNew);
  if (changed.length === 0) return;
  const standing = new Map((await standingLots(rows, stamp.shopId)).map((lot) => [lot.part.id, lot]));
  const lots = changed.map(({ item }) => {
    const lot = standing.get(item.id);
    if (!lot) throw new RangeError(`save: no lot stands as ${item.id}`);
    return { standing: lot, said: receivedLot(item, products, 0) };
  });
  const containers = await containersOf(rows, stamp.shopId, [...new Set(lots.map((lot) => lot.standing.lotId))]);
  stamp.touched.add(
    'lots',
    lots.map(({ standing }) => standing.lotId),
  );
  const counts: Recording[] = [];
  for (const { standing, said } of lots)
    counts.push(...(await correctLot(rows, stamp, { zone, reason, standing, lot: said, containers })));
  await recordMovements(rows, stamp, counts);
}

/** Put lots on the shelf: each container is filled by the supplier, and what is already gone from it is counted off. */
export async function receiveLots(rows: Rows, stamp: Stamp, zone: Zone, lots: ReceivedLot[]): Promise<void> {
  const { shopId } = stamp;
  stamp.touched.add(
    'lots',
    lots.map(({ id }) => id),
  );
  for (const { productId: product, packText: pack, count } of lots) stamp.came.push({ product, pack, count });
  await insertMany(
    rows,
    'Lot',
    lots.map(({ id, position, productId, packText, size, count, receivedOn, order: orderId, offer: offerId }) => {
      const ordered = { orderId, offerId };
      const goods = { productId, packText, pack: toStored(size), count, receivedOn };
      return { shopId, id, position: small(position), ...goods, ...ordered };
    }),
  );
  await insertMany(
    rows,
    'Container',
    lots.flatMap((lot) => containerRows(shopId, lot)),
  );
  await recordMovements(
    rows,
    stamp,
    lots.flatMap((lot) => firstMovements(lot, atClock(zone, lot.receivedOn, 0), stamp.recordedAt)),
  );
  await noteOpened(
    rows,
    stamp,
    lots.flatMap(({ id, count, openedOn }) => {
      if (openedOn === null) return [];
      const opened = { lotId: id, is: openedOn, occurredAt: atClock(zone, openedOn, 0) };
      return Array.from({ length: count }, (_, place) => ({ ...opened, place }));
    }),
  );
}

const containerRows = (shopId: string, { id: lotId, count, paid, openedOn, expiresOn, keptIn }: ReceivedLot) => {
  const shares = paid === null ? null : shareOut(paid, count);
  return Array.from({ length: count }, (_, place) => {
    return { shopId, lotId, place, paid: toStoredOrNull(shares?.[place] ?? null), openedOn, expiresOn, keptIn };
  });
};

function firstMovements(lot: ReceivedLot, receivedAt: Instant, now: Instant): Recording[] {
  return Array.from({ length: lot.count }, (_, place) => place).flatMap((place) => {
    const received = receipt(lot.size, { id: newId(), at: receivedAt });
    const ledger = { form: lot.form, size: lot.size, receivedOn: lot.receivedOn, movements: [received] };
    const counted = setTo(ledger, lot.remaining, { id: newId(), at: later(now, receivedAt) });
    if (!counted.ok) throw new RangeError(`save: lot ${lot.id} cannot hold what is left in it`);
    return [received, ...(counted.value ? [counted.value] : [])].map((movement) => ({
      lotId: lot.id,
      place,
      movement,
    }));
  });
}

/**
 * What a file may say anew of a lot: how its pack is written, a price nobody knew, its days, and what is left.
 *
 * Gives    the counts of what is left, which are still to be recorded
 */
async function correctLot(
  rows: Rows,
  stamp: Stamp,
  { zone, reason, standing, lot, containers }: Correcting,
): Promise<Recording[]> {
  const { shopId } = stamp;
  const { lotId, part, packText } = standing;
  const shares = lot.paid === null ? null : shareOut(lot.paid, part.containers.length);
  const data = { packText: lot.packText };
  if (lot.packText !== packText) await rows.lot.update({ where: { shopId_id: { shopId, id: lotId } }, data });
  const counts: Recording[] = [];
  for (const [index, { place, paid }] of part.containers.entries()) {
    const learned = paid === null ? (shares?.[index] ?? null) : null;
    const where = { shopId_lotId_place: { shopId, lotId, place } };
    if (learned !== null) await rows.container.update({ where, data: { paid: toStored(learned) } });
    const container = containers({ lotId, place });
    if (!container) throw new RangeError(`save: no container ${place} in lot ${lotId}`);
    for (const change of changesTo(container, lot, zone, stamp.recordedAt)) {
      await changeContainer(rows, stamp, { lotId, place, ...change, reason });
    }
    const now = { id: newId(), at: latest(container.ledger.movements, stamp.recordedAt) };
    const counted = setTo(container.ledger, lot.remaining, now);
    if (!counted.ok) throw new RangeError(`save: lot ${lot.id} cannot hold what is left in it`);
    if (counted.value) counts.push({ lotId, place, movement: counted.value, reason: 'counted by an import' });
  }
  return counts;
}

type Correcting = {
  zone: Zone;
  reason: string;
  standing: StandingLot;
  lot: ReceivedLot;
  containers: (at: ContainerAt) => ContainerStanding | null;
};

type Change = { kind: ChangeKind; is: string | null; occurredAt: Instant };

/** What a lot of a file says otherwise than a container's row does. */
function changesTo(container: ContainerStanding, lot: ReceivedLot, zone: Zone, now: Instant): Change[] {
  const { openedOn, keptIn, expiresOn } = lot;
  const changes: Change[] = [];
  if (openedOn !== container.openedOn) {
    const at = openedOn === null ? now : atClock(zone, openedOn, 0);
    changes.push({ kind: openedOn === null ? 'shut' : 'opened', is: openedOn, occurredAt: at });
  }
  if (keptIn !== container.keptIn) changes.push({ kind: 'moved', is: keptIn, occurredAt: now });
  if (expiresOn !== container.expiresOn) changes.push({ kind: 'dated', is: expiresOn, occurredAt: now });
  return changes;
}

/** A count by import is of what stands now, after everything in the books. */
const latest = (movements: readonly { occurredAt: Instant }[], now: Instant): Instant =>
  movements.map(({ occurredAt }) => occurredAt).reduce(later, now);

function later(a: Instant, b: Instant): Instant {
  if (a > b) return a;
  return b;
}

function receivedLot(lot: FileLot, products: Map<string, ShopFile['products'][number]>, position: number): ReceivedLot {
  const product = products.get(lot.product);
  const size = product ? packOf(lot.pack, product) : null;
  if (!product || size === null) throw new RangeError(`save: lot ${lot.id} has no size`);
  const remaining = lot.remaining === null ? size : packOf(lot.remaining, product);
  if (remaining === null) throw new RangeError(`save: lot ${lot.id} does not say what is left`);
  return {
    ...{ id: lot.id, position, productId: lot.product, packText: lot.pack, size, form: product.form, remaining },
    count: small(lot.count),
    paid: lot.paid === null ? null : parsed(readMoney(lot.paid)),
    receivedOn: Day.parse(lot.receivedOn),
    openedOn: lot.openedOn === null ? null : Day.parse(lot.openedOn),
    expiresOn: lot.expiresOn === null ? null : Day.parse(lot.expiresOn),
    ...{ keptIn: lot.keptIn, order: lot.order, offer: lot.offer },
  };
}
