import 'server-only';
import { keyOf } from './by-owner';
import { database } from './database';
import { standingLots } from './lot-rows';
import type { ContainerAt } from './movements';

/** Finds where a container stands in the books, by the name that the shop file has for it now. */
export type SpotNamed = (lot: string, place: number) => ContainerAt | null;

/**
 * Which container each name of the shop file means now. A name can pass to another container when one is opened out of
 * a lot of several; the lot and the place in the books never change.
 *
 * Takes    a lot, or a part of one, when only names under it are asked for
 */
export async function containersByName(shopId: string, under?: string): Promise<SpotNamed> {
  const { reader } = await database();
  const lots = await reader.$transaction((rows) => standingLots(rows, shopId, under));
  const spots = new Map(
    lots.flatMap(({ part, lotId }) =>
      part.containers.map(({ place }, index) => [keyOf(part.id, index), { lotId, place }] as const),
    ),
  );
  return (lot, place) => spots.get(keyOf(lot, place)) ?? null;
}

/** Whether a shop has a container in its books. */
export async function hasContainer(shopId: string, { lotId, place }: ContainerAt): Promise<boolean> {
  const { reader } = await database();
  const found = await reader.container.findUnique({ where: { shopId_lotId_place: { shopId, lotId, place } } });
  return found !== null;
}
