import 'server-only';
import type { Container } from '../engine/shop';
import { lastingAddress, spotsNamed } from './bottle-address';

/** Where a bottle has its own page; its lot in the books and which of that lot it is, from 1, as its label says. */
export type BottleAddress = { href: string; lotId: string; number: number };
export type BottleAddressOf = (container: Pick<Container, 'lot' | 'place'>) => BottleAddress;

/** The lasting address of every bottle of a shop, for pages that show many. */
export async function bottleAddresses(shopId: string): Promise<BottleAddressOf> {
  const spotNamed = await spotsNamed(shopId);
  return ({ lot, place }) => {
    const spot = spotNamed(lot, place);
    // A bottle that got another name since the shop was read is still found by the one it had.
    const passing = `/shelf/bottle/${encodeURIComponent(lot)}/${place}`;
    return spot
      ? { href: lastingAddress(spot), lotId: spot.lotId, number: spot.place + 1 }
      : { href: passing, lotId: lot, number: place + 1 };
  };
}
