'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../_parts/form-field';
import { backUpAction } from './actions';

/** Makes a backup while the shop runs. */
export function BackUpButton() {
  const [state, send, isSending] = useActionState(backUpAction, IDLE);
  return (
    <form action={send} className="apart">
      <FormAnswer state={state} />
      <p>
        <button type="submit" disabled={isSending}>
          {isSending ? 'Backing up…' : 'Back up now'}
        </button>
      </p>
    </form>
  );
}
