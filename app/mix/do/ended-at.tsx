'use client';

import { deviceAhead, shopNow } from '@/app/_parts/shop-clock';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { instantOf } from '@/shared/time/instant';
import { nextMinute, readLocalTime } from '@/shared/time/local-time';
import { showClock } from '@/shared/time/show-day';
import styles from './do.module.css';
import type { Act } from './frame';
import { HoldButton } from './hold-button';

/** When the last plant was sprayed, large, and the way to move it later: people are kept out from the latest end on. */
export function EndedAt({ mix, act }: { mix: MixProgress; act: Act }) {
  const { plan, answers, sprayingUntil } = mix;
  const end = readLocalTime(answers.endedAt, plan.zone);
  if (!end.ok || sprayingUntil === null) return null;
  const later = () => act({ do: 'sprayed', until: nextMinute(shopNow()), ahead: deviceAhead() });
  return (
    <div className={styles.ended}>
      <p className={styles.amount} data-long="">
        Ended {showClock(instantOf(end.value), plan.zone)}
      </p>
      <a className="button" href="#endedAt">
        Change it
      </a>
      <HoldButton press={later}>A plant came after that: it ended now</HoldButton>
    </div>
  );
}
