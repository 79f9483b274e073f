'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../_parts/form-field';
import { HiddenFields } from '../_parts/hidden-fields';
import { doneSprayingAction } from './actions';
import styles from './mix.module.css';

type DoneProps = { shop: string; commandId: string; program: string; on: string };

/** Puts a missed spraying on record as it was planned. Where that would open a bench, it waits for a confirmation. */
export function DoneIt({ shop, commandId, program, on }: DoneProps) {
  const [state, send, isSending] = useActionState(doneSprayingAction, IDLE);
  return (
    <form action={send} className={styles.done}>
      <HiddenFields of={{ commandId, shop, program, on }} />
      <FormAnswer state={state} />
      <button type="submit" disabled={isSending}>
        {isSending ? 'Noting…' : 'It was done as planned'}
      </button>
    </form>
  );
}
