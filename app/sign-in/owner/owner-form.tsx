'use client';

import { useActionState } from 'react';
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from '@/shared/access/password-fault';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { makeOwnerAction } from '../actions';
import styles from '../sign-in.module.css';

/** The owner's name and password; where others reach this shop, the code out of the terminal, too. */
export function OwnerForm({ asksCode }: { asksCode: boolean }) {
  const [state, send, isSending] = useActionState(makeOwnerAction, IDLE);
  return (
    <form action={send} className={styles.form}>
      {asksCode && (
        <FormField
          state={state}
          name="code"
          label="The code"
          hint="Ten signs. They stand in the terminal in which the shop was started."
        >
          {(wiring) => (
            <input
              {...wiring}
              defaultValue={typedIn(state, 'code')}
              autoComplete="off"
              autoCapitalize="none"
              required
            />
          )}
        </FormField>
      )}
      <FormField state={state} name="name" label="Your name" hint="What you enter from now on is signed with it.">
        {(wiring) => (
          <input
            {...wiring}
            defaultValue={typedIn(state, 'name')}
            autoComplete="username"
            autoCapitalize="words"
            maxLength={60}
            required
          />
        )}
      </FormField>
      <FormField
        state={state}
        name="password"
        label="A password"
        hint={`At least ${SHORTEST_PASSWORD} characters, better 15: a few words that do not belong together.`}
      >
        {(wiring) => (
          <input {...wiring} type="password" autoComplete="new-password" maxLength={LONGEST_PASSWORD} required />
        )}
      </FormField>
      <FormAnswer state={state} />
      <button type="submit" data-main="" disabled={isSending}>
        {isSending ? 'Making it…' : 'Make the owner’s sign-in'}
      </button>
    </form>
  );
}
