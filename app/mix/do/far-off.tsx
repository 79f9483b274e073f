'use client';

import { useState } from 'react';
import { LONGEST_LEFT_OUT, leftOutKey } from '@/shared/mix/finish-body';
import type { PlanPour } from '@/shared/mix/mix-plan';
import type { MixProgress } from '@/shared/mix/mix-progress';
import { partsExactly } from '@/shared/mix/poured-so-far';
import styles from './do.module.css';
import type { Act } from './frame';

type FarOffProps = {
  mix: MixProgress;
  act: Act;
  fill: number;
  planned: PlanPour;
  /** Whether it is left out, and only the reason counts any more. */
  isLeftOut: boolean;
  /** Whether somebody wanted to go on without saying which. */
  isAsked: boolean;
  /** Opens the fields for whatever was poured. */
  other: () => void;
};

/** An amount that nothing here measures: whoever goes on says how it was measured, what was poured, or why nothing was. */
export function FarOff({ mix, act, fill, planned, isLeftOut, isAsked, other }: FarOffProps) {
  const [leaving, setLeaving] = useState(isLeftOut);
  const { product, exactText, farOff, coarse } = planned;
  const exactly = partsExactly(mix, fill, product);
  return (
    <section className={styles.stop} aria-label="It cannot be measured here">
      <p>
        <b className="grave">Stop:</b> {farOff} {coarse}
      </p>
      {isAsked && !isLeftOut && (
        <p role="alert" className={styles.fault}>
          Say how it was measured, what was poured, or that it is left out.
        </p>
      )}
      {!isLeftOut && (
        <div className={styles.choices}>
          {exactly.length > 0 && (
            <button type="button" onClick={() => act({ do: 'change', fill, product, parts: exactly })}>
              I measured {exactText} with something finer
            </button>
          )}
          <button type="button" onClick={other}>
            Another amount went in
          </button>
          {!leaving && (
            <button type="button" onClick={() => setLeaving(true)}>
              Leave it out
            </button>
          )}
        </div>
      )}
      {(leaving || isLeftOut) && <WhyLeftOut {...{ mix, act, fill, product, isLeftOut, isAsked }} />}
    </section>
  );
}

type WhyProps = Omit<FarOffProps, 'planned' | 'other'> & { product: string };

function WhyLeftOut({ mix, act, fill, product, isLeftOut, isAsked }: WhyProps) {
  const [asked, setAsked] = useState(false);
  const rule = leftOutKey(product);
  const reason = mix.reasons[rule] ?? '';
  const missing = (asked || isAsked) && reason.trim() === '';
  const leave = () => (reason.trim() === '' ? setAsked(true) : act({ do: 'left-out', fill, product }));
  return (
    <div className={styles.sure}>
      <label htmlFor="why-left-out">Why it is left out</label>
      <textarea
        id="why-left-out"
        rows={2}
        maxLength={LONGEST_LEFT_OUT}
        value={reason}
        aria-invalid={missing}
        aria-describedby={missing ? 'why-left-out-fault' : undefined}
        onChange={({ target }) => act({ do: 'reason', rule, text: target.value })}
      />
      {missing && (
        <p id="why-left-out-fault" className={styles.fault}>
          Write why; it goes into the record.
        </p>
      )}
      {!isLeftOut && (
        <button type="button" onClick={leave}>
          Yes, leave it out
        </button>
      )}
    </div>
  );
}
