'use client';

import { useActionState } from 'react';
import type { AcceptScreen } from '@/lib/views/accept-rows';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../_parts/form-field';
import { HiddenFields } from '../_parts/hidden-fields';
import { acceptRowsAction } from './accept-actions';
import styles from './setup.module.css';

/** How somebody knows that damaged rows are true, and that they looked. What would open is asked about after that. */
export function AcceptForm({ screen: { shop, commandId, seen } }: { screen: AcceptScreen }) {
  const [state, send, isSending] = useActionState(acceptRowsAction, IDLE);
  if (state.status === 'done') return <FormAnswer state={state} />;
  return (
    <form action={send} className={styles.form}>
      <HiddenFields of={{ commandId, shop, seen }} />
      <FormField state={state} name="reason" id="accept-reason" label="How you know">
        {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'reason')} />}
      </FormField>
      <FormField state={state} name="sure" id="accept-sure" label="I have looked at each, and it is true">
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
