'use client';

import { useActionState } from 'react';
import type { AcceptScreen } from '@/lib/views/accept-rows';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../_parts/form-field';
import { HiddenFields } from '../_parts/hidden-fields';
import styles from './setup.module.css';

type AcceptFormProps = {
  screen: AcceptScreen;
  action: (state: FormState, form: FormData) => Promise<FormState>;
  /** Tells the fields of several such forms on a page apart. */
  name: string;
};

/** How somebody knows that damaged rows are true, and that they looked. What would open is asked about after that. */
export function AcceptForm({ screen: { shop, commandId, seen }, action, name }: AcceptFormProps) {
  const [state, send, isSending] = useActionState(action, IDLE);
  if (state.status === 'done') return <FormAnswer state={state} />;
  return (
    <form action={send} className={styles.form}>
      <HiddenFields of={{ commandId, shop, seen }} />
      <FormField state={state} name="reason" id={`${name}-reason`} label="How you know">
        {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'reason')} />}
      </FormField>
      <FormField state={state} name="sure" id={`${name}-sure`} label="I have looked at each, and it is true">
        {(wiring) => (
          <input {...wiring} type="checkbox" value="yes" defaultChecked={typedIn(state, 'sure') === 'yes'} />
        )}
      </FormField>
      <FormAnswer state={state} />
      <p>
        <button type="submit" disabled={isSending}>
          {isSending ? 'Accepting…' : 'Accept it as it stands'}
        </button>
      </p>
    </form>
  );
}
