'use client';

import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useSent } from '../../_parts/use-sent';
import { takePriceAction } from './actions';
import styles from './orders.module.css';

type TakePriceProps = { shop: string; order: string; offer: string; cameOn: string; label: string };

/** Lets what was paid be the price of the offer, in one step. */
export function TakePriceForm({ shop, order, offer, cameOn, label }: TakePriceProps) {
  const { state, send, isSending, form, commandId } = useSent(takePriceAction, `price ${order} ${offer} ${cameOn}`);
  return (
    <form ref={form} action={send} className={styles.take}>
      <HiddenFields of={{ commandId, shop, order, offer, cameOn }} />
      <button type="submit" disabled={isSending || commandId === ''}>
        {label}
      </button>
      <FormAnswer state={state} />
    </form>
  );
}
