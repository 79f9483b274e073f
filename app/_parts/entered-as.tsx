'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import styles from './entered-as.module.css';
import { enteredAsAction } from './entered-as-action';
import { FormAnswer, FormField, typedIn } from './form-field';

/** Whose name entries from this browser carry, and how to change it: a phone goes from hand to hand. */
export function EnteredAs({ who }: { who: string }) {
  const [state, send, isSending] = useActionState(enteredAsAction, IDLE);
  return (
    <details className={styles.who}>
      <summary>
        Entries from here are signed <b>{who}</b>
      </summary>
      <form action={send} className={styles.form}>
        <FormField state={state} name="who" id="entered-as" label="Who works with this browser?">
          {(wiring) => (
            <input {...wiring} defaultValue={typedIn(state, 'who', who)} autoComplete="name" maxLength={60} />
          )}
        </FormField>
        <button type="submit" disabled={isSending}>
          Sign so
        </button>
        <FormAnswer state={state} />
      </form>
      <p className={styles.open}>
        Whoever is at this computer can see and change everything. <a href="/sign-in/owner">Make an owner’s sign-in</a>
      </p>
    </details>
  );
}
