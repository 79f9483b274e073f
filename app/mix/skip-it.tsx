'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../_parts/form-field';
import { HiddenFields } from '../_parts/hidden-fields';
import { skipSprayingAction } from './actions';
import styles from './mix.module.css';

type SkipProps = { shop: string; commandId: string; program: string; on: string };

/** Leaves a missed spraying out, with the reason that its program keeps. */
export function SkipIt({ shop, commandId, program, on }: SkipProps) {
  const [state, send, isSending] = useActionState(skipSprayingAction, IDLE);
  return (
    <details className={styles.skip}>
      <summary>Skip it</summary>
      <form action={send}>
        <HiddenFields of={{ commandId, shop, program, on }} />
        <FormField state={state} name="reason" id={`why-${program}-${on}`} label="Why it was left out">
          {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'reason')} maxLength={300} />}
        </FormField>
        <FormAnswer state={state} />
        <button type="submit" disabled={isSending}>
          {isSending ? 'Noting…' : 'Note it as skipped'}
        </button>
      </form>
    </details>
  );
}
