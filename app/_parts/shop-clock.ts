'use client';

import { useEffect, useSyncExternalStore } from 'react';
import { clock } from '@/lib/clock';
import { type Instant, isInstant } from '@/shared/time/instant';
import { aheadAt, type Contact, contactAhead, shopTime } from '@/shared/time/shop-time';

/*
 * The shop's time on a device. It is asked for when a page of a mix opens, each minute, and whenever somebody comes back
 * to the page; in between the device counts on.
 */

const AGAIN_MS = 60_000;
const ANSWER_MS = 8_000;
/** A page that comes to life sooner than this was made by the shop just now, and was not kept anywhere. */
const NEW_MS = 10_000;

let contact: Contact | null = null;
const listeners = new Set<() => void>();

const reading = () => ({ wall: clock.now(), steady: clock.steady() });

/** What the shop's clock shows now, as far as this device can tell. */
export const shopNow = (): Instant => shopTime(contact ?? lastContact(), reading());

/** By how much this device's clock was ahead of the shop's when it last heard from it; null: it never did. */
export const deviceAhead = (): number | null => contact && aheadAt(contact);

/** The same for a page, which is made anew when it changes. */
export const useDeviceAhead = (): number | null => useSyncExternalStore(listen, deviceAhead, () => null);

/**
 * Keep the shop's time on this page.
 *
 * Takes   the moment at which the shop made the page; null where it could not
 */
export function useShopClock(madeAt: number | null): void {
  useEffect(() => {
    const { wall, steady } = reading();
    // Counted from when the page was asked for: later rather than earlier.
    // A page that this device kept was made some other time, and says nothing of now.
    if (contact === null && madeAt !== null && isInstant(madeAt) && steady < NEW_MS && !isKeptPage()) {
      heard({ shop: madeAt, wall: wall - steady, steady: 0 });
    }
    const back = () => {
      if (document.visibilityState === 'visible') void askShop();
    };
    const timer = setInterval(back, AGAIN_MS);
    document.addEventListener('visibilitychange', back);
    window.addEventListener('pageshow', back);
    window.addEventListener('online', back);
    back();
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', back);
      window.removeEventListener('pageshow', back);
      window.removeEventListener('online', back);
    };
  }, [madeAt]);
}

/** Asks the shop for its time. Without an answer the device counts on. */
async function askShop(): Promise<void> {
  const asked = reading();
  try {
    const answer = await fetch('/mix/now', { cache: 'no-store', signal: AbortSignal.timeout(ANSWER_MS) });
    const { now } = answer.ok ? await answer.json() : { now: null };
    if (typeof now === 'number' && isInstant(now)) heard({ shop: now, ...asked });
  } catch {
    // No network.
  }
}

function heard(latest: Contact): void {
  contact = latest;
  try {
    localStorage.setItem(AHEAD_KEY, String(aheadAt(latest)));
  } catch {
    // A browser that keeps nothing asks the shop again.
  }
  for (const told of listeners) told();
}

function listen(told: () => void): () => void {
  listeners.add(told);
  return () => {
    listeners.delete(told);
  };
}

const AHEAD_KEY = 'clock ahead';

/** Whether this page comes out of what the device keeps. */
const isKeptPage = (): boolean => document.documentElement.hasAttribute('data-kept');

/** By how much this device's clock was ahead when the shop was heard last, by an earlier page: better than nothing. */
function lastContact(): Contact | null {
  try {
    const ahead = Number(localStorage.getItem(AHEAD_KEY) ?? Number.NaN);
    return contactAhead(ahead, reading());
  } catch {
    return null;
  }
}
