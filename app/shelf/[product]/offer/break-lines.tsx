'use client';

import { useEffect, useState } from 'react';
import type { FormState } from '@/shared/forms/form-state';
import { typedBreaks } from '@/shared/forms/offer';
import { FormField } from '../../../_parts/form-field';
import styles from '../../goods-form.module.css';

type BreakLine = { atLeast: string; price: string };

type BreakLinesProps = {
  state: FormState;
  lines: BreakLine[];
  /** Under which name the form keeps what is half typed. */
  kept: string;
};

/** Lower prices for more packs: as many lines as there are, and one more to write in. A line left empty means nothing. */
export function BreakLines({ state, lines, kept }: BreakLinesProps) {
  const isBack = state.status === 'invalid' || state.status === 'refused';
  const [shown, setShown] = useState<BreakLine[]>(() => [...(isBack ? backIn(state) : lines), BLANK]);
  const isDone = state.status === 'done';
  useEffect(() => {
    // What was saved is no longer half typed.
    if (isDone) return;
    // Lines that were added before a reload are put back; what stood in them is refilled with the rest of the form.
    const typed = typedBreaks(halfTyped(kept));
    setShown((before) => [...before, ...typed.slice(before.length)]);
  }, [kept, isDone]);
  return (
    <fieldset>
      <legend>Lower prices for more packs</legend>
      <p className={styles.hint}>A line left empty counts for nothing.</p>
      {shown.map((line, row) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines are only ever added at the end.
        <div key={row} className={styles.line}>
          <FormField state={state} name={`breaks[${row}].atLeast`} label="From how many packs">
            {(wiring) => <input {...wiring} defaultValue={line.atLeast} inputMode="numeric" autoComplete="off" />}
          </FormField>
          <FormField state={state} name={`breaks[${row}].price`} label="Price of one pack then">
            {(wiring) => <input {...wiring} defaultValue={line.price} inputMode="decimal" autoComplete="off" />}
          </FormField>
        </div>
      ))}
      <button type="button" onClick={() => setShown((before) => [...before, BLANK])}>
        One more line
      </button>
    </fieldset>
  );
}

const BLANK: BreakLine = { atLeast: '', price: '' };

function backIn(state: Extract<FormState, { status: 'invalid' | 'refused' }>): BreakLine[] {
  const fields = Object.entries(state.typed).map(([name, typed]) => [name, String(typed)]);
  const lines = typedBreaks(Object.fromEntries(fields));
  return lines.filter((line, row) => row < lines.length - 1 || line.atLeast !== '' || line.price !== '');
}

function halfTyped(kept: string): Record<string, string> {
  const fields: unknown = JSON.parse(sessionStorage.getItem(kept) ?? '{}');
  if (typeof fields !== 'object' || fields === null) return {};
  return Object.fromEntries(Object.entries(fields).map(([name, typed]) => [name, String(typed)]));
}
