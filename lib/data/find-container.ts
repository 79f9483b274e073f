import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { Zone } from '@/shared/time/zone';
import type { Rows } from './database';
import { standingLots } from './lot-rows';
import { type ContainerAt, type ContainerStanding, containerAt, spotOf } from './movements';

/**
 * A container by where it stands in the books, which never changes; or as the shop file names it just now: the lot, and
 * its place in that lot from 0.
 */
export type ContainerNamed = ContainerAt | { lot: string; place: number };

/**
 * A container with its ledger, by either of its names.
 *
 * Refuses  'not-found'
 */
export async function findContainer(
  rows: Rows,
  shopId: string,
  named: ContainerNamed,
): Promise<Outcome<ContainerStanding>> {
  const { place } = named;
  if ('lotId' in named) {
    const { lotId } = named;
    const known = await containerAt(rows, shopId, { lotId, place });
    return known ? accept(known) : refuse({ code: 'not-found', what: 'bottle', id: `${lotId}, number ${place + 1}` });
  }
  const { lot } = named;
  const standing = (await standingLots(rows, shopId, lot)).find(({ part }) => part.id === lot);
  const container = standing?.part.containers[place];
  const found =
    standing && container && (await containerAt(rows, shopId, { lotId: standing.lotId, place: container.place }));
  return found ? accept(found) : refuse({ code: 'not-found', what: 'container', id: `${lot}, number ${place + 1}` });
}

/** The container that a movement is of, with its ledger. Refuses 'not-found'. */
export async function containerOfMovement(rows: Rows, shopId: string, id: string): Promise<Outcome<ContainerStanding>> {
  const spot = await spotOf(rows, shopId, id);
  const found = spot && (await containerAt(rows, shopId, spot));
  return found ? accept(found) : refuse({ code: 'not-found', what: 'movement', id });
}

/** The zone of a shop. Refuses 'not-found'. */
export async function zoneOf(rows: Rows, shopId: string): Promise<Outcome<Zone>> {
  const shop = await rows.shop.findUnique({ where: { id: shopId }, select: { timeZone: true } });
  return shop ? accept(Zone.parse(shop.timeZone)) : refuse({ code: 'not-found', what: 'shop', id: shopId });
}
