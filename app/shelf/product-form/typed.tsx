'use client';

import { createContext, type ReactNode, useContext } from 'react';
import type { FormState } from '@/shared/forms/form-state';
import type { Unknown } from '@/shared/forms/product-unknowns';
import { FormField } from '../../_parts/form-field';
import styles from './product-form.module.css';

/** What every field of the form shares: what is typed, how to change it, what was wrong, what is not known. */
export type Typing = {
  draft: Readonly<Record<string, string>>;
  set: (name: string, value: string) => void;
  state: FormState;
  unknowns: Unknown[];
};

export const TypingContext = createContext<Typing | null>(null);

/** Throws when a field stands outside the form. */
export function useTyping(): Typing {
  const typing = useContext(TypingContext);
  if (!typing) throw new Error('a field of the product form stands outside of it');
  return typing;
}

type FieldProps = { name: string; label: ReactNode; hint?: ReactNode };

/** A line of text, or a number, which is text until it is read. */
export function TextField({ name, label, hint, list, ...mode }: FieldProps & { list?: string; number?: boolean }) {
  const { draft, set, state } = useTyping();
  return (
    <FormField state={state} name={name} label={label} hint={<Hint name={name} hint={hint} />}>
      {(wiring) => (
        <input
          {...wiring}
          value={draft[name] ?? ''}
          onChange={(event) => set(name, event.target.value)}
          inputMode={mode.number ? 'decimal' : undefined}
          className={mode.number ? styles.number : undefined}
          list={list}
          autoComplete="off"
        />
      )}
    </FormField>
  );
}

/** Several words, one a line. */
export function LinesField({ name, label, hint }: FieldProps) {
  const { draft, set, state } = useTyping();
  const value = draft[name] ?? '';
  return (
    <FormField state={state} name={name} label={label} hint={<Hint name={name} hint={hint} />}>
      {(wiring) => (
        <textarea
          {...wiring}
          value={value}
          onChange={(event) => set(name, event.target.value)}
          rows={Math.max(2, value.split('\n').length)}
        />
      )}
    </FormField>
  );
}

type ChoiceProps = FieldProps & { choices: readonly (readonly [value: string, text: string])[]; otherwise?: string };

/** One of a few. */
export function ChoiceField({ name, label, hint, choices, otherwise = '' }: ChoiceProps) {
  const { draft, set, state } = useTyping();
  return (
    <FormField state={state} name={name} label={label} hint={hint}>
      {(wiring) => (
        <select {...wiring} value={draft[name] ?? otherwise} onChange={(event) => set(name, event.target.value)}>
          {choices.map(([value, text]) => (
            <option key={value} value={value}>
              {text}
            </option>
          ))}
        </select>
      )}
    </FormField>
  );
}

/** What to write, and as long as nothing is written, what that prevents. */
function Hint({ name, hint }: { name: string; hint: ReactNode }) {
  const unknown = useTyping().unknowns.find(({ field }) => field === name);
  return (
    <>
      {hint}
      {unknown && (
        <span className={styles.unknown} data-grave={unknown.grave ? '' : undefined}>
          Not known. {unknown.says}
        </span>
      )}
    </>
  );
}
