import 'server-only';
import { ALERT_WAYS, type AlertWay } from '@/shared/alerts/alert-settings';
import { addMinutes, type Instant } from '@/shared/time/instant';

/** How the last try in one way went. Kept as long as the program runs: after a restart it is simply tried again. */
export type Try = { at: Instant; ok: boolean; message: string; failures: number };

/** How the last try of a shop in a way went; null when there was none. */
export const lastTry = (shopId: string, way: AlertWay): Try | null => tries.get(`${way} ${shopId}`) ?? null;

/** The ways in which the last try of a shop failed. */
export const failedTries = (shopId: string): (Try & { way: AlertWay })[] =>
  ALERT_WAYS.flatMap((way) => {
    const last = lastTry(shopId, way);
    return last && !last.ok ? [{ way, ...last }] : [];
  });

export function noteTry(shopId: string, way: AlertWay, { at, ok, message }: Omit<Try, 'failures'>): void {
  const failures = ok ? 0 : (lastTry(shopId, way)?.failures ?? 0) + 1;
  tries.set(`${way} ${shopId}`, { at, ok, message, failures });
}

/** Somebody changed where alerts go: what failed before is tried again at once. */
export function forgetTries(shopId: string): void {
  tries.delete(`mail ${shopId}`);
  tries.delete(`webhook ${shopId}`);
}

/** Whether to wait a little longer after failures: a minute, then two, four … and an hour at most. */
export function isTooSoon(shopId: string, way: AlertWay, now: Instant): boolean {
  const last = lastTry(shopId, way);
  if (!last || last.ok) return false;
  const pause = Math.min(2 ** (last.failures - 1), MOST_PAUSE);
  // A clock that was set back does not make it wait for longer than that.
  return now >= last.at && now < addMinutes(last.at, pause);
}

const MOST_PAUSE = 60;

const tries = triesInThisProcess(globalThis);

/** Kept where a reload of the program in development finds them again, and pages beside the timer do. */
function triesInThisProcess(house: { alertTries?: Map<string, Try> } & typeof globalThis) {
  house.alertTries ??= new Map();
  return house.alertTries;
}
