'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { signOutAction } from './actions';

/** Ends the session of this browser. */
export function SignOutButton() {
  const [, send, isSending] = useActionState(signOutAction, IDLE);
  return (
    <form action={send}>
      <button type="submit" disabled={isSending}>
        Sign out
      </button>
    </form>
  );
}
