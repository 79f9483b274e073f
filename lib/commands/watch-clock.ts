import 'server-only';
import type { Clock } from '@/lib/clock';
import { keepLook, startWatch, trustBefore } from '@/lib/data/clock-mark';
import { shopsHere } from '@/lib/data/shops';
import { shopFileOf } from '@/lib/data/snapshot';
import { inTurn } from '@/lib/data/writer';
import { type ClockDoubt, type ClockReading, type ClockTrust, looked } from '@/lib/engine/keepout/clock-doubt';
import { waitingIn } from '@/lib/engine/keepout/waiting';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';

/**
 * Look at the machine's clock once, and keep what is known of it.
 *
 * Takes   whether the program is only starting
 * Gives   why it is in doubt; null when it is not
 */
export async function lookAtClock(clock: Clock, isStart = false): Promise<ClockDoubt | null> {
  const before = await trustBefore(isStart);
  const reading = clock.reading();
  const own = await afterLook(before, reading);
  const trust = await inTurn((opened) => keepLook(opened, own, reading));
  return trust.doubt;
}

/** The shops are read only where it matters whether an interval waits to end in one of them. */
async function afterLook(before: ClockTrust | null, reading: ClockReading): Promise<ClockTrust> {
  let isAsked = false;
  const trust = looked(before, reading, () => {
    isAsked = true;
    return true;
  });
  if (!isAsked) return trust;
  const shops = await Promise.all((await shopsHere()).map(({ id }) => readableShop(id)));
  const isWaiting = waitingIn(shops.filter((shop) => shop !== null));
  return looked(before, reading, (...moments) => shops.includes(null) || isWaiting(...moments));
}

/** A shop; null where it cannot be read, and then nobody knows whether an interval waits in it. */
const readableShop = async (id: string): Promise<Shop | null> => {
  try {
    return shopOfFile(await shopFileOf(id));
  } catch (error) {
    console.error(`Shop ${id} cannot be read, so an interval in it counts as running:`, error);
    return null;
  }
};

const A_MINUTE = 60_000;

/**
 * Look at the clock now and every minute, as long as the program runs. A look that fails is tried again by the next; until
 * the first one succeeds the clock is in doubt.
 */
export async function watchClock(clock: Clock): Promise<void> {
  let isStart = true;
  await startWatch();
  const look = async () => {
    try {
      await lookAtClock(clock, isStart);
      isStart = false;
    } catch (error) {
      console.error('The clock could not be looked at:', error);
    }
  };
  await look();
  setInterval(look, A_MINUTE).unref();
}
