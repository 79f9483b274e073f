'use client';

import { isBeingTold } from '@/app/_parts/tell-spraying';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { sprayedBenches, untold } from '@/shared/mix/spraying-told';
import { instantOf } from '@/shared/time/instant';
import { showClock } from '@/shared/time/show-day';
import styles from './do.module.css';

/** Whether the shop knows already that the benches are closed. While it does not, people have to be kept out by hand. */
export function WhatTheShopKnows({ mix }: { mix: MixProgress }) {
  const { plan, sprayingSince, sprayingUntil } = mix;
  if (sprayingSince === null) return null;
  const names = plan.shopBenches.filter(({ id }) => sprayedBenches(mix).includes(id)).map(({ name }) => name);
  const ended =
    sprayingUntil === null ? 'being sprayed' : `sprayed until ${showClock(instantOf(sprayingUntil), plan.zone)}`;
  if (untold(mix) === null) {
    return (
      <p className={styles.why} data-good="" role="status">
        <b>The shop knows.</b> Every board says KEEP OUT of {names.join(', ')}: {ended}.
      </p>
    );
  }
  return (
    <p className={styles.why} data-grave="" role="status">
      <b>{isBeingTold(mix.commandId) ? 'The shop is being told.' : 'The shop does not know yet.'}</b> Keep people out of{' '}
      {names.join(', ')} yourself until it does. It is kept here and told by itself once there is a network.
    </p>
  );
}
