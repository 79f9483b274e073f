'use client';

import { useActionState, useRef } from 'react';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { useCommandId } from './use-command-id';
import { useHalfTyped } from './use-half-typed';

/** A form's action as the browser calls it. */
export type FormAction = (state: FormState, form: FormData) => Promise<FormState>;

/**
 * A form that may be sent again and again from one page: where it stands, a command id for each time, and what is half
 * typed kept through a reload under a key of its own.
 */
export function useSent(action: FormAction, key: string) {
  const [state, send, isSending] = useActionState(action, IDLE);
  const form = useRef<HTMLFormElement>(null);
  const done = state.status === 'done' ? state : false;
  const commandId = useCommandId(done);
  useHalfTyped(form, key, done);
  return { state, send, isSending, form, commandId };
}
