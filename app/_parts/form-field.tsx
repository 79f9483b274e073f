'use client';

import type { ReactNode } from 'react';
import type { FormState, Typed } from '@/shared/forms/form-state';
import { AskedAgain } from './earlier-opening';
import styles from './form-field.module.css';

/** What joins a field to its label, its hint and its fault. */
export type Wiring = { id: string; name: string; 'aria-invalid': boolean; 'aria-describedby': string | undefined };

type FieldProps = {
  state: FormState;
  name: string;
  label: ReactNode;
  hint?: ReactNode;
  /** When two forms on one page have a field of one name. */
  id?: string;
  children: (wiring: Wiring) => ReactNode;
};

/** One field of a form: its label, the field itself, what to write in it, and what was wrong with what was written. */
export function FormField({ state, name, label, hint, id = name, children }: FieldProps) {
  const fault = state.status === 'invalid' ? state.fields[name] : undefined;
  const told = [hint && `${id}-hint`, fault && `${id}-fault`].filter(Boolean).join(' ');
  return (
    <div className={styles.field}>
      <label htmlFor={id}>{label}</label>
      {children({ id, name, 'aria-invalid': fault !== undefined, 'aria-describedby': told || undefined })}
      {hint && (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      {fault && (
        <p id={`${id}-fault`} className={styles.fault}>
          {fault}
        </p>
      )}
    </div>
  );
}

/** What came of a form that was sent: done and where to look, or what stands in the way. */
export function FormAnswer({ state }: { state: FormState }) {
  if (state.status === 'idle') return null;
  return (
    <div role="alert" className={styles.said} data-good={state.status === 'done' ? '' : undefined}>
      <p>
        {state.message} {state.status === 'done' && state.link && <a href={state.link}>Look at it</a>}
      </p>
      {state.status === 'refused' && state.faults.map(({ path, message }) => <p key={path}>{message}</p>)}
      {state.status === 'refused' && state.earlier && <AskedAgain key={state.earlier.token} asked={state.earlier} />}
    </div>
  );
}

/** What was typed into a field before the form was sent, or what stands there to begin with. */
export function typedIn(state: FormState, name: string, otherwise = ''): string {
  const typed: Typed = state.status === 'invalid' || state.status === 'refused' ? state.typed : {};
  return String(typed[name] ?? otherwise);
}
