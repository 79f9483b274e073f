'use client';

import { FormAnswer } from '../../../_parts/form-field';
import { HiddenFields } from '../../../_parts/hidden-fields';
import { useSent } from '../../../_parts/use-sent';
import { saveOrderAction } from '../actions';

/** Notes that a list was ordered, as it stands. */
export function MarkOrdered({ fields, draft }: { fields: Record<string, string>; draft: string }) {
  const { state, send, isSending, form, commandId } = useSent(saveOrderAction, `ordered ${draft}`);
  return (
    <form ref={form} action={send}>
      <HiddenFields of={{ commandId, ...fields }} />
      <button type="submit" data-main="" disabled={isSending || commandId === '' || state.status === 'done'}>
        Mark as ordered
      </button>
      <FormAnswer state={state} />
    </form>
  );
}
