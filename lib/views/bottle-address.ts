import 'server-only';
import { containersByName, hasContainer } from '../data/container-names';
import { shopsAndShown } from './shown-shop';

/** What a printed code and every address of a bottle rest on: its lot in the books and its place there, from 0. */
export type BottleSpot = { lotId: string; place: number };

/**
 * The address of a bottle, which stays the same however its lot is divided later. Null when the shop that is looked at
 * has no such bottle.
 */
export async function bottleAddressOf(lotId: string, place: number): Promise<string | null> {
  const { shown } = await shopsAndShown();
  if (!shown || !Number.isSafeInteger(place) || place < 0 || place >= MOST_IN_A_LOT) return null;
  return (await hasContainer(shown.id, { lotId, place })) ? lastingAddress({ lotId, place }) : null;
}

const MOST_IN_A_LOT = 1_000_000;

/** "/shelf/bottle/LOT/no-2" for the second bottle of a lot. Its number is counted from 1, as on its label. */
export const lastingAddress = ({ lotId, place }: BottleSpot): string =>
  `/shelf/bottle/${encodeURIComponent(lotId)}/no-${place + 1}`;

/**
 * Where bottles stand in the books, by the names that pages have for them now: `spotNamed(lot, place)`, as the engine's
 * containers carry them. For whoever prints what has to last.
 */
export const spotsNamed = (shopId: string, under?: string) => containersByName(shopId, under);

/**
 * Which bottle an address means. The lasting form names it by its number; the other, by what pages call it now.
 *
 * Takes    the two parts after `/shelf/bottle/`, read out of the address
 * Gives    `moved` when the bottle has a lasting address of its own to go to; null when it means no bottle
 */
export async function bottleAt(lot: string, place: string): Promise<{ spot: BottleSpot; moved: boolean } | null> {
  const { shown } = await shopsAndShown();
  if (!shown) return null;
  const number = /^no-([1-9]\d{0,5})$/.exec(place)?.[1];
  if (number !== undefined) {
    const spot = { lotId: lot, place: Number(number) - 1 };
    return (await hasContainer(shown.id, spot)) ? { spot, moved: false } : null;
  }
  if (!/^\d{1,6}$/.test(place)) return null;
  const spot = (await containersByName(shown.id, lot))(lot, Number(place));
  return spot && { spot, moved: true };
}
