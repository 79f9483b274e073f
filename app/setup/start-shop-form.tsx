'use client';

import { useActionState, useEffect, useRef } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../_parts/form-field';
import { useCommandId } from '../_parts/use-command-id';
import { useHalfTyped } from '../_parts/use-half-typed';
import { startShopAction } from './actions';
import styles from './setup.module.css';

/** Starts a shop with nothing in it. Benches, bottles and programs follow, by hand or by a shop file. */
export function StartShopForm() {
  const [state, send, isSending] = useActionState(startShopAction, IDLE);
  const form = useRef<HTMLFormElement>(null);
  const commandId = useCommandId(state.status === 'done' && state);
  useHalfTyped(form, 'start-shop', state.status === 'done');
  const zone = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (zone.current?.value === '') zone.current.value = Intl.DateTimeFormat().resolvedOptions().timeZone;
  }, []);
  const value = (name: string, otherwise = '') => typedIn(state, name, otherwise);
  return (
    <form ref={form} action={send} className={styles.form}>
      <input type="hidden" name="commandId" value={commandId} />
      <FormField state={state} name="name" label="What it is called">
        {(wiring) => <input {...wiring} defaultValue={value('name')} autoComplete="organization" />}
      </FormField>
      <FormField state={state} name="timeZone" label="Time zone" hint="Region and city, such as America/New_York.">
        {(wiring) => <input {...wiring} ref={zone} defaultValue={value('timeZone')} />}
      </FormField>
      <FormField state={state} name="currency" label="Currency" hint="Three letters, such as USD.">
        {(wiring) => <input {...wiring} defaultValue={value('currency', 'USD')} />}
      </FormField>
      <FormField state={state} name="units" label="Units to show">
        {(wiring) => (
          <select key={value('units')} {...wiring} defaultValue={value('units', 'us')}>
            <option value="us">US: gallons and pounds</option>
            <option value="metric">metric: litres and kilograms</option>
          </select>
        )}
      </FormField>
      <FormField state={state} name="fillCapacity" label="What one sprayer fill holds" hint="Such as 2 gal or 8 L.">
        {(wiring) => <input {...wiring} defaultValue={value('fillCapacity')} />}
      </FormField>
      <FormAnswer state={state} />
      <p>
        <button type="submit" name="here" value="yes" data-main="" disabled={isSending}>
          {isSending ? 'Starting…' : 'Start it and work in it here'}
        </button>{' '}
        <button type="submit" name="here" value="no" disabled={isSending}>
          Only start it
        </button>
      </p>
    </form>
  );
}
