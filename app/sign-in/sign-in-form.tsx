'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../_parts/form-field';
import { signInAction } from './actions';
import styles from './sign-in.module.css';

/** Name and password. */
export function SignInForm({ to }: { to: string }) {
  const [state, send, isSending] = useActionState(signInAction, IDLE);
  return (
    <form action={send} className={styles.form}>
      <input type="hidden" name="to" value={to} />
      <FormField state={state} name="name" label="Your name">
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
      <FormField state={state} name="password" label="Password">
        {(wiring) => <input {...wiring} type="password" autoComplete="current-password" required />}
      </FormField>
      <FormAnswer state={state} />
      <button type="submit" data-main="" disabled={isSending}>
        {isSending ? 'Signing in…' : 'Sign in'}
      </button>
    </form>
  );
}
