'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../../_parts/form-field';
import { tryAlertsAction } from './actions';

/** Sends a test in every way that is saved, and says what happened. */
export function TryForm({ shop }: { shop: string }) {
  const [state, send, isSending] = useActionState(tryAlertsAction, IDLE);
  return (
    <form action={send}>
      <input type="hidden" name="shop" value={shop} />
      <FormAnswer state={state} />
      <button type="submit" disabled={isSending}>
        {isSending ? 'Sending…' : 'Send a test'}
      </button>
    </form>
  );
}
