import type { ShopFile } from './contract';

/** How many packs of one line of an order have come: those of the lots that name it. */
export const packsCame = (lots: ShopFile['lots'], order: string, offer: string): number =>
  lots.filter((lot) => lot.order === order && lot.offer === offer).reduce((sum, { count }) => sum + count, 0);
