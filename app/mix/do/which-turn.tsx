'use client';

import type { MixProgress } from '@/shared/mix/mix-progress';
import styles from './do.module.css';
import type { Act } from './frame';

/** Asks whether a mix that was begun without a planned spraying was one that is near. */
export function WhichTurn({ mix, act }: { mix: MixProgress; act: Act }) {
  const { plan, turn } = mix;
  if (plan.planned || plan.near.length === 0) return null;
  return (
    <fieldset className={styles.radios}>
      <legend>Was this a planned spraying?</legend>
      <label className={styles.check}>
        <input type="radio" name="turn" checked={turn === null} onChange={() => act({ do: 'turn', turn: null })} />
        <span>
          No, an extra mix
          <span className={styles.beside}>what is planned is still to be sprayed</span>
        </span>
      </label>
      {plan.near.map(({ program, on, text }) => (
        <label key={`${program} ${on}`} className={styles.check}>
          <input
            type="radio"
            name="turn"
            checked={turn?.program === program && turn.on === on}
            onChange={() => act({ do: 'turn', turn: { program, on } })}
          />
          <span>Yes, the one planned for {text}</span>
        </label>
      ))}
    </fieldset>
  );
}
