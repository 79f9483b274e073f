'use client';

import { useActionState } from 'react';
import type { UnderWaySeen } from '@/lib/views/under-way';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from './form-field';
import { HiddenFields } from './hidden-fields';
import { settleSprayingAction } from './under-way-actions';
import styles from './under-way-list.module.css';

/** The sprayings that were begun on any device and are not on record, each with the way to say what became of it. */
export function UnderWayList({ sprayings }: { sprayings: UnderWaySeen[] }) {
  if (sprayings.length === 0) return null;
  return (
    <section aria-labelledby="under-way">
      <h2 id="under-way">Begun, and not on record</h2>
      <ul className={styles.list}>
        {sprayings.map((spraying) => (
          <li key={spraying.id}>
            <p>
              <b>{spraying.recipe}</b> on {spraying.benches}
              {spraying.by && `, by ${spraying.by}`}: {spraying.standing}.
            </p>
            <Settle spraying={spraying} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Settle({ spraying: { id, shop, commandId, endedAt } }: { spraying: UnderWaySeen }) {
  const [state, send, isSending] = useActionState(settleSprayingAction, IDLE);
  return (
    <details className={styles.settle} open={state.status !== 'idle' || undefined}>
      <summary>Say what became of it</summary>
      <p className="soft small">
        Whoever began it finishes it on that device, with its amounts. Only if that cannot be done:
      </p>
      <form action={send}>
        <HiddenFields of={{ commandId, shop, spraying: id }} />
        <fieldset>
          <legend>What became of it</legend>
          <label className="tick">
            <input type="radio" name="became" value="ended" defaultChecked />
            It ended; the record comes later
          </label>
          <label className="tick">
            <input type="radio" name="became" value="recorded" />
            It ended; put it on record without amounts
          </label>
          <label className="tick">
            <input type="radio" name="became" value="never" />
            Nothing was sprayed
          </label>
        </fieldset>
        <FormField state={state} name="endedAt" id={`ended-${id}`} label="When the last plant was sprayed">
          {(wiring) => <input {...wiring} type="datetime-local" defaultValue={typedIn(state, 'endedAt', endedAt)} />}
        </FormField>
        <FormField state={state} name="reason" id={`reason-${id}`} label="If nothing was sprayed: how you know">
          {(wiring) => <input {...wiring} maxLength={300} defaultValue={typedIn(state, 'reason')} />}
        </FormField>
        <FormAnswer state={state} />
        <button type="submit" disabled={isSending}>
          {isSending ? 'Noting…' : 'Note it'}
        </button>
      </form>
    </details>
  );
}
