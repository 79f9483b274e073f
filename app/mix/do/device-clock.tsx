'use client';

import { useDeviceAhead } from '@/app/_parts/shop-clock';
import { showMinutes } from '@/shared/measure/show';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { isApart, wasSet } from '@/shared/time/shop-time';
import styles from './do.module.css';

const MINUTE = 60_000;

/** Says that this device's clock is wrong. What is noted here counts by the shop's clock all the same. */
export function DeviceClock() {
  const ahead = useDeviceAhead();
  if (ahead === null || !isApart(ahead)) return null;
  return (
    <p className={styles.device} role="status">
      <b>
        This device’s clock is {showMinutes(Math.abs(ahead) / MINUTE)} {ahead > 0 ? 'ahead' : 'behind'}.
      </b>{' '}
      Times noted here are the shop’s.
    </p>
  );
}

/** A clock that was set between the taps and now leaves open which of the two times it was. */
export function ClockWasSet({ mix }: { mix: MixProgress }) {
  const ahead = useDeviceAhead();
  if (!wasSet(mix.deviceAhead, ahead)) return null;
  return (
    <p className={styles.device} role="alert">
      <b>This device’s clock was set since spraying began.</b> Look at both times.
    </p>
  );
}
