'use client';

import { useActionState } from 'react';
import type { ThingOpened } from '@/lib/views/thing-form';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { putAwayAction, removeProductAction } from '../product-actions';
import styles from './product-tools.module.css';

/** Puts a product away, or takes it out again. Nothing is lost either way. */
export function PutAwayForm({ thing, archived }: { thing: ThingOpened; archived: boolean }) {
  const [state, send, isSending] = useActionState(putAwayAction, IDLE);
  return (
    <form action={send} className={styles.form}>
      <HiddenFields
        of={{
          ...{ commandId: thing.commandId, shop: thing.shop, product: thing.id },
          ...{ standing: thing.standing, archived: archived ? 'no' : 'yes' },
        }}
      />
      <p className="soft small">
        {archived
          ? 'Taken out again, it stands on the shelf and can be chosen as before.'
          : 'Put away, it is offered nowhere any more. What it did stays, and it can be taken out again.'}
      </p>
      <button type="submit" disabled={isSending}>
        {archived ? 'Take it out again' : 'Put it away'}
      </button>
      <FormAnswer state={state} />
    </form>
  );
}

/** Removes a product that was entered by mistake. One that anything uses stays, and says where it is used. */
export function RemoveForm({ thing }: { thing: ThingOpened }) {
  const [state, send, isSending] = useActionState(removeProductAction, IDLE);
  return (
    <form action={send} className={styles.form}>
      <HiddenFields of={{ commandId: thing.commandId, shop: thing.shop, product: thing.id }} />
      <p className="soft small">Entered by mistake? What nothing uses can be removed; it cannot be brought back.</p>
      <button type="submit" disabled={isSending}>
        Remove it for good
      </button>
      <FormAnswer state={state} />
    </form>
  );
}
