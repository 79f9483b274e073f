'use client';

import { useActionState, useRef } from 'react';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { SUPPLIER_PAGES, type SupplierFields } from '@/shared/forms/supplier';
import { idFromName } from '@/shared/shop-file/id-from-name';
import { WEEKDAYS } from '@/shared/time/day';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useCommandId } from '../../_parts/use-command-id';
import { useHalfTyped } from '../../_parts/use-half-typed';
import styles from '../goods-form.module.css';
import { KeepBoth } from '../keep-both';
import { saveSupplierAction } from './actions';

type SupplierFormProps = {
  shop: string;
  /** Null for a new one. */
  id: string | null;
  expecting: string;
  taken: string[];
  currency: string;
  fields: SupplierFields;
};

/** Enters a supplier, or changes one. What is left empty is not known, and each field says what that prevents. */
export function SupplierForm(props: SupplierFormProps) {
  const [state, act, isSending] = useActionState(saveSupplierAction, IDLE);
  const send = (form: FormData) => {
    // The id is made before the form is sent, so that sending it twice is one supplier.
    form.set('id', props.id ?? idFromName(String(form.get('name')), props.taken, SUPPLIER_PAGES));
    act(form);
  };
  // Once something was saved, what stands there now is what the next change begins with.
  const key = `${props.expecting} ${state.status === 'done' ? state.link : ''}`;
  return <Fields key={key} {...props} state={state} send={send} isSending={isSending} />;
}

type FieldsProps = SupplierFormProps & { state: FormState; send: (form: FormData) => void; isSending: boolean };

function Fields({ shop, id, expecting, currency, fields, state, send, isSending }: FieldsProps) {
  const form = useRef<HTMLFormElement>(null);
  const commandId = useCommandId(false);
  useHalfTyped(form, `supplier ${shop} ${id ?? 'new'}`, state.status === 'done');
  const money = (name: 'freightPerOrder' | 'freeFreightOver' | 'minimumOrder', label: string, hint: string) => (
    <FormField state={state} name={name} label={label} hint={hint}>
      {(wiring) => <input {...wiring} defaultValue={typedIn(state, name, fields[name])} inputMode="decimal" />}
    </FormField>
  );
  return (
    <form ref={form} action={send} className={styles.form}>
      <HiddenFields of={{ commandId, shop, expecting, archived: fields.archived, currency }} />
      <FormField state={state} name="name" label="Who sells">
        {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'name', fields.name)} autoComplete="off" />}
      </FormField>
      {money(
        'freightPerOrder',
        'Freight of one order',
        'Such as 12.00; 0 when there is none. Left empty: not known, and nothing that comes from here has a cost to replace.',
      )}
      {money(
        'freeFreightOver',
        'No freight from',
        'The value of goods from which they send free. Left empty: freight is always paid.',
      )}
      {money('minimumOrder', 'Smallest order', 'The least they send. Left empty: not known.')}
      <WorkingDays fields={fields} state={state} />
      <FormField
        state={state}
        name="closedOn"
        label="Closed on"
        hint="One date a line, such as 2026-07-04. No order is taken or sent then. The shop's own holidays count by themselves."
      >
        {(wiring) => <textarea {...wiring} rows={3} defaultValue={typedIn(state, 'closedOn', fields.closedOn)} />}
      </FormField>
      <KeepBoth state={state} label="Both are meant: a second supplier of that name" />
      <FormAnswer state={state} />
      <p className={styles.buttons}>
        <button type="submit" data-main="" disabled={isSending || commandId === ''}>
          {isSending ? 'Saving…' : id === null ? 'Add this supplier' : 'Save'}
        </button>
      </p>
    </form>
  );
}

const DAY_NAMES = { mon: 'Mon', tue: 'Tue', wed: 'Wed', thu: 'Thu', fri: 'Fri', sat: 'Sat', sun: 'Sun' };

function WorkingDays({ fields, state }: Pick<FieldsProps, 'fields' | 'state'>) {
  const isBack = state.status === 'invalid' || state.status === 'refused';
  const fault = state.status === 'invalid' ? state.fields['works.mon'] : undefined;
  // A box that was left unticked is not sent at all, so what came back says which were ticked.
  const isTicked = (name: `works.${keyof typeof DAY_NAMES}`) =>
    isBack ? typedIn(state, name) === 'yes' : fields[name] === 'yes';
  return (
    <fieldset aria-describedby={fault ? 'works-fault' : 'works-hint'}>
      <legend>Days on which they take and send orders</legend>
      <p id="works-hint" className={styles.hint}>
        Lead times are counted in these days.
      </p>
      <div className={styles.days}>
        {WEEKDAYS.map((day) => (
          <label key={day} className="tick">
            <input type="checkbox" name={`works.${day}`} value="yes" defaultChecked={isTicked(`works.${day}`)} />
            {DAY_NAMES[day]}
          </label>
        ))}
      </div>
      {fault && (
        <p id="works-fault" className={styles.fault}>
          {fault}
        </p>
      )}
    </fieldset>
  );
}
