'use client';

import type { Answer, MixProgress } from '@/shared/mix/mix-progress';
import type { Fault } from '@/shared/outcome';
import { AmountField } from './amount-field';
import styles from './do.module.css';
import type { Act } from './frame';

type AnswerFieldProps = {
  mix: MixProgress;
  act: Act;
  faults: Fault[];
  field: Answer;
  label: string;
  type?: 'text' | 'datetime-local';
  placeholder?: string;
  /** True for an amount of spray, which has its unit beside it. */
  isSpray?: boolean;
};

/** One field of the record, with what is wrong about it. */
export function AnswerField({ mix, act, faults, field, label, type = 'text', placeholder, isSpray }: AnswerFieldProps) {
  const wrong = faults.filter(({ path }) => path === field);
  return (
    <div>
      <label htmlFor={field}>{label}</label>
      {isSpray ? (
        <AmountField
          id={field}
          text={mix.answers[field]}
          kind="spray"
          otherwise={placeholder ?? ''}
          isWrong={wrong.length > 0}
          describedBy={wrong.length > 0 ? `${field}-fault` : undefined}
          change={(text) => act({ do: 'answer', field, text })}
        />
      ) : (
        <input
          id={field}
          type={type}
          value={mix.answers[field]}
          placeholder={placeholder}
          maxLength={200}
          autoComplete="off"
          aria-invalid={wrong.length > 0}
          aria-describedby={wrong.length > 0 ? `${field}-fault` : undefined}
          onChange={({ target }) => act({ do: 'answer', field, text: target.value })}
        />
      )}
      {wrong.length > 0 && (
        <p id={`${field}-fault`} className={styles.fault}>
          {wrong.map(({ message }) => message).join(' ')}
        </p>
      )}
    </div>
  );
}
