'use client';

import { useActionState, useRef } from 'react';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { OFFER_PAGES, type OfferFields } from '@/shared/forms/offer';
import { idFromName } from '@/shared/shop-file/id-from-name';
import { FormAnswer, FormField, typedIn } from '../../../_parts/form-field';
import { HiddenFields } from '../../../_parts/hidden-fields';
import { useCommandId } from '../../../_parts/use-command-id';
import { useHalfTyped } from '../../../_parts/use-half-typed';
import styles from '../../goods-form.module.css';
import { KeepBoth } from '../../keep-both';
import { saveOfferAction } from './actions';
import { BreakLines } from './break-lines';

type OfferFormProps = {
  shop: string;
  /** Null for a new one. */
  id: string | null;
  expecting: string;
  taken: string[];
  suppliers: { id: string; name: string }[];
  fields: OfferFields;
  form: 'liquid' | 'powder';
  currency: string;
  /** Since when the price that stands there holds, in words. */
  holds: string | null;
};

/** Enters an offer, or changes one. Another price is a new line of its history; the old one stays. */
export function OfferForm(props: OfferFormProps) {
  const [state, act, isSending] = useActionState(saveOfferAction, IDLE);
  const send = (form: FormData) => {
    // The id is made before the form is sent, so that sending it twice is one offer.
    const words = ['supplier', 'product', 'pack'].map((name) => String(form.get(name)));
    form.set('id', props.id ?? idFromName(words.join(' '), props.taken, OFFER_PAGES));
    act(form);
  };
  // Once something was saved, what stands there now is what the next change begins with.
  const key = `${props.expecting} ${state.status === 'done' ? state.link : ''}`;
  return <Fields key={key} {...props} state={state} send={send} isSending={isSending} />;
}

type FieldsProps = OfferFormProps & { state: FormState; send: (form: FormData) => void; isSending: boolean };

function Fields(props: FieldsProps) {
  const { shop, id, expecting, fields, form: kind, currency, holds, state, send, isSending } = props;
  const form = useRef<HTMLFormElement>(null);
  const commandId = useCommandId(false);
  const kept = `offer ${shop} ${fields.product} ${id ?? 'new'}`;
  useHalfTyped(form, kept, state.status === 'done');
  const { product, archived, was } = fields;
  const hidden = { commandId, shop, expecting, product, archived, was, currency };
  const text = (name: 'pack' | 'price' | 'leadDays' | 'since', label: string, hint: string) => (
    <FormField state={state} name={name} label={label} hint={hint}>
      {(wiring) => (
        <input
          {...wiring}
          defaultValue={typedIn(state, name, fields[name])}
          inputMode={name === 'price' ? 'decimal' : name === 'leadDays' ? 'numeric' : undefined}
          type={name === 'since' ? 'date' : 'text'}
          autoComplete="off"
        />
      )}
    </FormField>
  );
  return (
    <form ref={form} action={send} className={styles.form}>
      <HiddenFields of={hidden} />
      <SupplierField {...props} />
      {text(
        'pack',
        'What one pack holds',
        `As it is sold, such as ${kind === 'liquid' ? '1 qt, 600 mL or 16 fl oz' : '2.5 lb, 500 g or 8 oz'}.${
          id === null
            ? ''
            : ' Sold in another size now? Add that as an offer of its own, so that this history stays true.'
        }`,
      )}
      {text('price', 'Price of one pack', 'Without freight, such as 9.40.')}
      <BreakLines state={state} lines={fields.breaks} kept={kept} />
      {text(
        'since',
        holds === null ? 'Price holds from' : 'A new price holds from',
        holds === null
          ? 'Left empty: from today.'
          : `${holds} If you change it: from this day, or left empty, from today.`,
      )}
      {text(
        'leadDays',
        'Working days from order to arrival',
        'The supplier’s working days. Left empty: not known, and this offer gives no order-by day.',
      )}
      <KeepBoth state={state} label="Both are meant: a second offer of that pack" />
      <FormAnswer state={state} />
      <p className={styles.buttons}>
        <button type="submit" data-main="" disabled={isSending || commandId === ''}>
          {isSending ? 'Saving…' : id === null ? 'Add this offer' : 'Save'}
        </button>
      </p>
    </form>
  );
}

/** Who sells it is chosen once: the same pack from somebody else is an offer of theirs. */
function SupplierField({ state, fields, suppliers, id }: FieldsProps) {
  const chosen = typedIn(state, 'supplier', fields.supplier);
  if (id !== null) return <input type="hidden" name="supplier" value={fields.supplier} />;
  return (
    <FormField
      state={state}
      name="supplier"
      label="Who sells it"
      hint={
        <>
          Not among them? <a href="/shelf/suppliers/new">Add a supplier</a>
        </>
      }
    >
      {(wiring) => (
        <select key={chosen} {...wiring} defaultValue={chosen || (suppliers.length === 1 ? suppliers[0]?.id : '')}>
          <option value="">Choose…</option>
          {suppliers.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      )}
    </FormField>
  );
}
