'use client';

import { AMOUNT_UNITS, type AmountKind, joinAmount, splitAmount, stepAmount } from '@/shared/measure/amount-typed';
import styles from './amount-field.module.css';

type AmountFieldProps = {
  id: string;
  text: string;
  kind: AmountKind;
  /** What counts while nothing is typed. */
  otherwise?: string;
  change: (text: string) => void;
  isWrong?: boolean;
  describedBy?: string | undefined;
};

/** An amount with − and + beside it and its unit to choose: only the number is typed, and not even that by most. */
export function AmountField({
  id,
  text,
  kind,
  otherwise = '',
  change,
  isWrong = false,
  describedBy,
}: AmountFieldProps) {
  const meant = splitAmount(text.trim() === '' ? otherwise : text, kind);
  const { number } = text.trim() === '' ? { number: '' } : meant;
  const { unit } = meant;
  const step = (direction: 1 | -1) => change(stepAmount(text.trim() === '' ? otherwise : text, kind, direction));
  return (
    <div className={styles.amount}>
      <button type="button" onClick={() => step(-1)} aria-label="Less" aria-controls={id}>
        −
      </button>
      <input
        id={id}
        value={number}
        placeholder={text.trim() === '' ? meant.number : undefined}
        inputMode="decimal"
        autoComplete="off"
        maxLength={100}
        aria-invalid={isWrong}
        aria-describedby={describedBy}
        onChange={({ target }) => change(joinAmount(target.value, unit))}
      />
      {unit !== null && (
        <select aria-label="Unit" value={unit} onChange={({ target }) => change(joinAmount(number, target.value))}>
          {AMOUNT_UNITS[kind].map((one) => (
            <option key={one}>{one}</option>
          ))}
        </select>
      )}
      <button type="button" onClick={() => step(1)} aria-label="More" aria-controls={id}>
        +
      </button>
    </div>
  );
}
