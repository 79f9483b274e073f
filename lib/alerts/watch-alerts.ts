import 'server-only';
import type { Clock } from '@/lib/clock';
import { unlessElsewhere } from '@/lib/data/one-process';
import { alertRound } from './alert-round';

const A_MINUTE = 60_000;

/**
 * Look for alerts now and every minute, as long as the program runs. The next look waits for the last one to end, and one
 * that fails is made up for by the next. Of several processes at one database one looks at a time, so nobody is told twice. Begun again, as a reload in development does, the earlier watch ends.
 */
export function watchAlerts(clock: Clock, round = alertRound, pause = A_MINUTE): () => void {
  const house: { alertWatch?: () => void } & typeof globalThis = globalThis;
  house.alertWatch?.();
  let timer: NodeJS.Timeout | undefined;
  let isOver = false;
  const look = async (): Promise<void> => {
    await unlessElsewhere('alerts', () => round(clock)).catch((error) =>
      console.error('Alerts could not be looked for:', error),
    );
    if (!isOver) timer = setTimeout(look, pause).unref();
  };
  house.alertWatch = () => {
    isOver = true;
    clearTimeout(timer);
  };
  timer = setTimeout(look, 0).unref();
  return house.alertWatch;
}
