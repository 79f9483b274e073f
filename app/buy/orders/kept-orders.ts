'use client';

import { placedAmong, readWritten, type WrittenOrder } from '@/shared/forms/written-order';

/*
 * The orders that were written on this device and not sent. Each is kept under the shop and the page that it was written
 * on, so that the page finds it again, and another page of the same supplier does not write over it.
 */

/** What the names under which they are kept begin with. The number is that of their form. */
const KEY = 'order 1 ';

const keyOf = ({ shop, address }: Pick<WrittenOrder, 'shop' | 'address'>): string => `${KEY}${shop} ${address}`;

/** The page that is open, as it names the order written on it. */
export const thisPage = (): string => window.location.pathname + window.location.search;

/** The order that was written on one page; null when none is kept. */
export const keptOrder = (at: Pick<WrittenOrder, 'shop' | 'address'>): WrittenOrder | null =>
  readWritten(textAt(keyOf(at)));

/** Every order of a shop that was written on this device and not sent, the latest first. */
export function keptOrders(shop: string): WrittenOrder[] {
  const kept = keys().flatMap((key) => (key.startsWith(`${KEY}${shop} `) ? (readWritten(textAt(key)) ?? []) : []));
  return kept.sort((one, other) => (one.writtenOn < other.writtenOn ? 1 : -1));
}

/** Keep an order on this device. Where the browser keeps nothing, it lasts as long as its page. */
export function keepOrder(written: WrittenOrder): void {
  try {
    localStorage.setItem(keyOf(written), JSON.stringify(written));
  } catch {
    // Nothing is kept by this browser, or there is no room left.
  }
}

export function dropOrder(at: Pick<WrittenOrder, 'shop' | 'address'>): void {
  try {
    localStorage.removeItem(keyOf(at));
  } catch {
    // There is nothing kept to be thrown away.
  }
}

/** Throw away what was written of an order that is placed now, by what it asks for. */
export function dropPlaced(shop: string, supplier: string, packs: readonly { offer: string; count: string }[]): void {
  const its = keptOrders(shop).filter((one) => one.standing === '' && one.supplier.id === supplier);
  for (const one of placedAmong(its, packs)) dropOrder(one);
}

function keys(): string[] {
  try {
    return Object.keys(localStorage);
  } catch {
    return [];
  }
}

function textAt(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
