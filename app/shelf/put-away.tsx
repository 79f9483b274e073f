'use client';

import { useActionState } from 'react';
import { IDLE } from '@/shared/forms/form-state';
import { FormAnswer } from '../_parts/form-field';
import { HiddenFields } from '../_parts/hidden-fields';
import { useCommandId } from '../_parts/use-command-id';
import styles from './goods-form.module.css';
import { putAwayGoodsAction, removeGoodsAction } from './suppliers/actions';

type PutAwayProps = {
  shop: string;
  what: 'supplier' | 'offer';
  id: string;
  expecting: string;
  archived: boolean;
  /** Prices are history, so an offer is never removed. */
  removable: boolean;
};

/** Puts a supplier or an offer away or takes it out again; and removes a supplier that was never used. */
export function PutAway(props: PutAwayProps) {
  const { what, archived, removable } = props;
  return (
    <section aria-labelledby="away" className={styles.apart}>
      <h2 id="away">{archived ? 'Put away' : `No longer ${what === 'supplier' ? 'buying there' : 'sold'}?`}</h2>
      <p>
        {archived
          ? 'It counts in no price and nothing is bought from it.'
          : 'Put away, it counts in no price and is offered nowhere. Its prices stay, and it can be taken out again.'}
      </p>
      {/* One that changed is another form: what was sent for the last one is done with. */}
      <Shelve key={props.expecting} {...props} />
      {removable && <Remove {...props} />}
    </section>
  );
}

function Shelve({ shop, what, id, expecting, archived }: PutAwayProps) {
  const [state, send, isSending] = useActionState(putAwayGoodsAction, IDLE);
  const commandId = useCommandId(false);
  return (
    <form action={send}>
      <HiddenFields of={{ commandId, shop, what, id, expecting, archived: archived ? 'no' : 'yes' }} />
      <FormAnswer state={state} />
      <button type="submit" disabled={isSending || commandId === ''}>
        {archived ? 'Take it out again' : `Put this ${what} away`}
      </button>
    </form>
  );
}

function Remove({ shop, what, id }: PutAwayProps) {
  const [state, send, isSending] = useActionState(removeGoodsAction, IDLE);
  const commandId = useCommandId(false);
  return (
    <details>
      <summary className={styles.summary}>Entered by mistake?</summary>
      <form action={send}>
        <HiddenFields of={{ commandId, shop, what, id }} />
        <p className={styles.hint}>What was never used can be removed for good. This cannot be undone.</p>
        <FormAnswer state={state} />
        <button type="submit" disabled={isSending || commandId === ''}>
          Remove this {what} for good
        </button>
      </form>
    </details>
  );
}
