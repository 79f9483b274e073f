'use client';

import { type ReactNode, useActionState, useEffect, useRef } from 'react';
import { type FormState, IDLE, type Typed } from '@/shared/forms/form-state';
import { startShopAction } from './actions';
import styles from './setup.module.css';
import { useCommandId } from './use-command-id';
import { useHalfTyped } from './use-half-typed';

/** Starts a shop with nothing in it. Benches, bottles and programs follow by a shop file. */
export function StartShopForm() {
  const [state, send, isSending] = useActionState(startShopAction, IDLE);
  const form = useRef<HTMLFormElement>(null);
  const commandId = useCommandId(state.status === 'done');
  useHalfTyped(form, 'start-shop', state.status === 'done');
  const zone = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (zone.current?.value === '') zone.current.value = Intl.DateTimeFormat().resolvedOptions().timeZone;
  }, []);
  const typed: Typed = state.status === 'invalid' || state.status === 'refused' ? state.typed : {};
  const value = (name: string, otherwise = '') => String(typed[name] ?? otherwise);
  return (
    <form ref={form} action={send} className={styles.form}>
      <input type="hidden" name="commandId" value={commandId} />
      <Field state={state} name="name" label="What it is called">
        {(wiring) => <input {...wiring} defaultValue={value('name')} autoComplete="organization" />}
      </Field>
      <Field state={state} name="timeZone" label="Time zone" hint="Region and city, such as America/New_York.">
        {(wiring) => <input {...wiring} ref={zone} defaultValue={value('timeZone')} />}
      </Field>
      <Field state={state} name="currency" label="Currency" hint="Three letters, such as USD.">
        {(wiring) => <input {...wiring} defaultValue={value('currency', 'USD')} />}
      </Field>
      <Field state={state} name="units" label="Units to show">
        {(wiring) => (
          <select key={value('units')} {...wiring} defaultValue={value('units', 'us')}>
            <option value="us">US: gallons and pounds</option>
            <option value="metric">metric: litres and kilograms</option>
          </select>
        )}
      </Field>
      <Field state={state} name="fillCapacity" label="What one sprayer fill holds" hint="Such as 2 gal or 8 L.">
        {(wiring) => <input {...wiring} defaultValue={value('fillCapacity')} />}
      </Field>
      <Answer state={state} />
      <p>
        <button type="submit" data-main="" disabled={isSending}>
          {isSending ? 'Starting…' : 'Start this shop'}
        </button>
      </p>
    </form>
  );
}

type Wiring = { id: string; name: string; 'aria-invalid': boolean; 'aria-describedby': string | undefined };
type FieldProps = {
  state: FormState;
  name: string;
  label: string;
  hint?: string;
  children: (wiring: Wiring) => ReactNode;
};

function Field({ state, name, label, hint, children }: FieldProps) {
  const fault = state.status === 'invalid' ? state.fields[name] : undefined;
  const told = [hint && `${name}-hint`, fault && `${name}-fault`].filter(Boolean).join(' ');
  return (
    <div>
      <label htmlFor={name}>{label}</label>
      {children({ id: name, name, 'aria-invalid': fault !== undefined, 'aria-describedby': told || undefined })}
      {hint && (
        <p id={`${name}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      {fault && (
        <p id={`${name}-fault`} className={styles.fault}>
          {fault}
        </p>
      )}
    </div>
  );
}

function Answer({ state }: { state: FormState }) {
  if (state.status === 'idle') return null;
  return (
    <div role="alert" className={styles.said} data-good={state.status === 'done' ? '' : undefined}>
      <p>
        {state.message} {state.status === 'done' && state.link && <a href={state.link}>Look at it</a>}
      </p>
      {state.status === 'refused' && state.faults.map(({ path, message }) => <p key={path}>{message}</p>)}
    </div>
  );
}
