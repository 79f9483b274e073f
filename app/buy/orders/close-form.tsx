'use client';

import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useSent } from '../../_parts/use-sent';
import { closeOrderAction } from './actions';

type CloseFormProps = { shop: string; id: string; standing: string; formId: string; isClosed: boolean };

/** Closes an order of which nothing more is expected, or opens it again. */
export function CloseForm({ shop, id, standing, formId, isClosed }: CloseFormProps) {
  const { state, send, isSending, form, commandId } = useSent(closeOrderAction, `close ${id}`);
  const closed = isClosed ? 'no' : 'yes';
  return (
    <form ref={form} action={send}>
      <HiddenFields of={{ commandId: commandId || formId, shop, id, standing, closed }} />
      <button type="submit" disabled={isSending}>
        {isClosed ? 'Expect the rest after all' : 'Nothing more will come'}
      </button>
      <FormAnswer state={state} />
    </form>
  );
}
