'use client';

import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useSent } from '../../_parts/use-sent';
import { takePriceAction } from './actions';
import styles from './orders.module.css';

type TakePriceProps = {
  shop: string;
  formId: string;
  order: string;
  offer: string;
  line: number;
  cameOn: string;
  label: string;
};

/** Lets what was paid be the price of the offer, in one step. */
export function TakePriceForm({ shop, formId, order, offer, line, cameOn, label }: TakePriceProps) {
  const { state, send, isSending, form, commandId } = useSent(takePriceAction, `price ${order} ${line} ${cameOn}`);
  return (
    <form ref={form} action={send} className={styles.take}>
      <HiddenFields of={{ commandId: commandId || formId, shop, order, offer, line: String(line), cameOn }} />
      <button type="submit" disabled={isSending}>
        {label}
      </button>
      <FormAnswer state={state} />
    </form>
  );
}
