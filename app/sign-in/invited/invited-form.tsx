'use client';

import { useActionState } from 'react';
import { LONGEST_PASSWORD, SHORTEST_PASSWORD } from '@/shared/access/password-fault';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { comeInAction } from '../actions';
import styles from '../sign-in.module.css';

/** Name and password of whoever was invited. */
export function InvitedForm({ code, name, isKnown }: { code: string; name: string; isKnown: boolean }) {
  const [state, send, isSending] = useActionState(comeInAction, IDLE);
  return (
    <form action={send} className={styles.form}>
      <HiddenFields of={{ code, ...(isKnown && { name: '' }) }} />
      {!isKnown && (
        <FormField state={state} name="name" label="Your name" hint="What you enter from now on is signed with it.">
          {(wiring) => (
            <input
              {...wiring}
              defaultValue={typedIn(state, 'name', name)}
              autoComplete="username"
              autoCapitalize="words"
              maxLength={60}
              required
            />
          )}
        </FormField>
      )}
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
      {state.status === 'invalid' && state.fields.code && <p className="grave">{state.fields.code}</p>}
      <FormAnswer state={state} />
      <button type="submit" data-main="" disabled={isSending}>
        {isSending ? 'Coming in…' : 'Come in'}
      </button>
    </form>
  );
}
