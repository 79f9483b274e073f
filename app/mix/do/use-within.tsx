'use client';

import { useEffect, useState } from 'react';
import { shopNow } from '@/app/_parts/shop-clock';
import { showMinutes } from '@/shared/measure/show';
import { minutesUntil } from '@/shared/mix/minutes-until';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { addMinutes, instantOf } from '@/shared/time/instant';
import { showClock } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import styles from './do.module.css';

const WARN_BEFORE = 15;

/** How long this fill may still be used, from its first product on. Nothing where the recipe does not say. */
export function UseWithin({ mix: { plan, mixedSince }, fill }: { mix: MixProgress; fill: number }) {
  const [now, setNow] = useState(() => shopNow());
  useEffect(() => {
    const again = () => setNow(shopNow());
    const timer = setInterval(again, 10_000);
    document.addEventListener('visibilitychange', again);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', again);
    };
  }, []);
  const since = mixedSince.find((one) => one.fill === fill)?.at;
  if (since === undefined || plan.useWithinMinutes === null) return null;
  const until = addMinutes(instantOf(since), plan.useWithinMinutes);
  const left = minutesUntil(until, now);
  const at = showClock(until, plan.zone, dayOf(plan.zone, now));
  if (left <= 0) {
    return (
      <p className={styles.clock} data-past="" role="alert">
        <b>Past its time since {at}.</b> Spray no more of it. What its label says of leftover spray governs.
      </p>
    );
  }
  return (
    <p
      className={styles.clock}
      data-soon={left <= WARN_BEFORE ? '' : undefined}
      role={left <= WARN_BEFORE ? 'alert' : undefined}
    >
      Use within <b>{showMinutes(left)}</b>, by {at}
      {left <= WARN_BEFORE && <b>: soon past its time</b>}
    </p>
  );
}
