'use client';

import { useState } from 'react';
import type { ReceiveScreen } from '@/lib/views/receive';
import type { FormState } from '@/shared/forms/form-state';
import type { Day } from '@/shared/time/day';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useSent } from '../../_parts/use-sent';
import { receiveOneAction } from './actions';
import styles from './receive.module.css';

/** Bottles of one product, without an order. */
export function OneLotForm({ screen }: { screen: ReceiveScreen }) {
  const { products, product, places, shopId, formId, today, ways } = screen;
  const { state, send, isSending, form, commandId } = useSent(receiveOneAction, 'receive-one');
  const [chosen, setChosen] = useState(product?.id ?? '');
  const packs = products.find(({ id }) => id === chosen)?.packs ?? [];
  const value = (name: string, otherwise = '') => typedIn(state, name, otherwise);
  return (
    <form ref={form} action={send} onReset={() => setChosen(product?.id ?? '')} className={styles.form}>
      <HiddenFields of={{ commandId: commandId || formId, shop: shopId, currency: ways.currency }} />
      <FormField state={state} name="product" label="Product">
        {(wiring) => (
          <select
            key={value('product')}
            {...wiring}
            defaultValue={value('product', product?.id ?? '')}
            onChange={(event) => setChosen(event.target.value)}
          >
            <option value="">choose…</option>
            {products.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        )}
      </FormField>
      <PackField key={chosen} state={state} packs={packs} />
      <FormField state={state} name="count" label="How many">
        {(wiring) => <input {...wiring} inputMode="numeric" defaultValue={value('count', '1')} autoComplete="off" />}
      </FormField>
      <FormField
        state={state}
        name="paid"
        label={`Paid for all of them, ${ways.currency}`}
        hint="Without freight. Empty when it is not known: their worth is then not known either."
      >
        {(wiring) => <input {...wiring} inputMode="decimal" defaultValue={value('paid')} autoComplete="off" />}
      </FormField>
      <DayFields state={state} today={today} />
      <PlaceField state={state} places={places} id="one-place" />
      <FormAnswer state={state} />
      <p>
        <button type="submit" data-main="" disabled={isSending}>
          {isSending ? 'Putting it there…' : 'Put on the shelf'}
        </button>
      </p>
    </form>
  );
}

function PackField({ state, packs }: { state: FormState; packs: string[] }) {
  return (
    <FormField
      state={state}
      name="pack"
      label="One bottle holds"
      hint={packs.length > 0 ? `Known packs: ${packs.join(', ')}.` : 'Such as 1 qt or 500 g.'}
    >
      {(wiring) => (
        <>
          <input
            {...wiring}
            defaultValue={typedIn(state, 'pack', packs[0])}
            key={typedIn(state, 'pack')}
            list="packs"
          />
          <datalist id="packs">
            {packs.map((pack) => (
              <option key={pack} value={pack} />
            ))}
          </datalist>
        </>
      )}
    </FormField>
  );
}

function DayFields({ state, today }: { state: FormState; today: Day }) {
  return (
    <>
      <FormField state={state} name="receivedOn" label="Received on" hint="A day to come, for what is on its way.">
        {(wiring) => <input {...wiring} type="date" defaultValue={typedIn(state, 'receivedOn', today)} />}
      </FormField>
      <FormField state={state} name="expiresOn" label="Last day as printed" hint="Empty when none is printed.">
        {(wiring) => <input {...wiring} type="date" defaultValue={typedIn(state, 'expiresOn')} />}
      </FormField>
    </>
  );
}

type PlaceFieldProps = { state: FormState; places: string[]; id: string };

/** Where it will stand, out of the places in use or a new one. */
export function PlaceField({ state, places, id }: PlaceFieldProps) {
  return (
    <FormField
      state={state}
      name="keptIn"
      id={id}
      label="Where it stands"
      hint={places.length > 0 ? `In use: ${places.join(', ')}.` : 'Such as: lower shelf, cabinet.'}
    >
      {(wiring) => (
        <>
          <input {...wiring} defaultValue={typedIn(state, 'keptIn')} list={`${id}-list`} maxLength={100} />
          <datalist id={`${id}-list`}>
            {places.map((place) => (
              <option key={place} value={place} />
            ))}
          </datalist>
        </>
      )}
    </FormField>
  );
}
