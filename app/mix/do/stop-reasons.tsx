'use client';

import type { MixProgress } from '@/shared/mix/mix-progress';
import styles from './do.module.css';
import type { Act } from './frame';

type StopReasonsProps = {
  mix: MixProgress;
  act: Act;
  stops: MixProgress['asked'];
  /** Whether somebody went on without a reason. */
  isAsked: boolean;
};

/** Each rule that says stop, and why it is sprayed all the same. */
export function StopReasons({ mix, act, stops, isAsked }: StopReasonsProps) {
  return stops.map(({ rule, messages }) => {
    const reason = mix.reasons[rule] ?? '';
    const missing = isAsked && reason.trim() === '';
    return (
      <div key={rule} className={styles.stop}>
        {messages.map((message) => (
          <p key={message}>
            <b className="grave">Stop:</b> {message}
          </p>
        ))}
        <label htmlFor={`reason-${rule}`}>Why it is sprayed all the same</label>
        <textarea
          id={`reason-${rule}`}
          rows={2}
          maxLength={500}
          value={reason}
          aria-invalid={missing}
          aria-describedby={missing ? `reason-${rule}-fault` : undefined}
          onChange={({ target }) => act({ do: 'reason', rule, text: target.value })}
        />
        {missing && (
          <p id={`reason-${rule}-fault`} className={styles.fault}>
            Write why, or leave it.
          </p>
        )}
      </div>
    );
  });
}
