'use client';

import { useEffect } from 'react';
import { FormAnswer } from '../../../_parts/form-field';
import { HiddenFields } from '../../../_parts/hidden-fields';
import { useSent } from '../../../_parts/use-sent';
import { saveOrderAction } from '../actions';
import { dropPlaced } from '../kept-orders';

type MarkOrderedProps = {
  shop: string;
  supplier: string;
  formId: string;
  fields: Record<string, string>;
  packs: { offer: string; count: string }[];
};

/** Notes that a list was ordered, as it stands. What was written of it on this device is done with then. */
export function MarkOrdered({ shop, supplier, formId, fields, packs }: MarkOrderedProps) {
  const { state, send, isSending, form, commandId } = useSent(saveOrderAction, `ordered ${supplier}`);
  const isDone = state.status === 'done';
  // biome-ignore lint/correctness/useExhaustiveDependencies: only an order that was just placed is looked for, and once.
  useEffect(() => {
    if (!isDone) return;
    dropPlaced(shop, supplier, packs);
    window.history.replaceState(null, '', addressWithout(packs));
  }, [isDone]);
  return (
    <form ref={form} action={send}>
      <HiddenFields of={{ commandId: commandId || formId, shop, supplier, ...fields }} />
      <button type="submit" data-main="" disabled={isSending || isDone}>
        Mark as ordered
      </button>
      <FormAnswer state={state} />
      {state.status === 'invalid' && (
        <ul className="grave">
          {Object.values(state.fields).map((fault) => (
            <li key={fault}>{fault}</li>
          ))}
        </ul>
      )}
    </form>
  );
}

/** The address of the list without what is ordered now, so that a page that is read anew does not offer it again. */
function addressWithout(packs: MarkOrderedProps['packs']): string {
  const { pathname, search } = window.location;
  const fields = [...new URLSearchParams(search)];
  const offers = new Set(packs.map(({ offer }) => offer));
  const placed = fields.flatMap(([name, value]) => {
    const row = /^(lines\[\d+\]\.)offer$/.exec(name)?.[1];
    return row !== undefined && offers.has(value) ? [row] : [];
  });
  const left = fields.filter(([name]) => !placed.some((row) => name.startsWith(row)));
  return `${pathname}?${new URLSearchParams(left)}`;
}
