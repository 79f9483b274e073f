'use client';

import { useRef } from 'react';
import type { OfferIn, ReceiveScreen } from '@/lib/views/receive';
import type { FormState } from '@/shared/forms/form-state';
import { moneyText } from '@/shared/measure/money';
import { priceOfPacks } from '@/shared/measure/price-break';
import { showMoney } from '@/shared/measure/show';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useSent } from '../../_parts/use-sent';
import { receiveDeliveryAction } from './actions';
import { PlaceField } from './one-lot-form';
import styles from './receive.module.css';

type DeliveryFormProps = { screen: ReceiveScreen; delivery: NonNullable<ReceiveScreen['delivery']> };

/** What one supplier brought: how many of each pack, and what was paid for them. All of it goes on the shelf, or nothing. */
export function DeliveryForm({ screen, delivery }: DeliveryFormProps) {
  const { shopId, formId, today, places, ways } = screen;
  const { order } = delivery;
  const { state, send, isSending, form, commandId } = useSent(
    receiveDeliveryAction,
    `delivery ${shopId} ${order?.id ?? delivery.id}`,
  );
  return (
    <form ref={form} action={send} className={styles.form}>
      <HiddenFields of={{ commandId: commandId || formId, shop: shopId, currency: ways.currency }} />
      {order && <input type="hidden" name="order" value={order.id} />}
      <ul className={styles.offers}>
        {delivery.offers.map((offer, row) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: an order may have two lines of one offer.
          <OfferLine key={`${offer.id} ${row}`} state={state} offer={offer} row={row} currency={ways.currency} />
        ))}
      </ul>
      <noscript>
        <p>Where no script runs, what was paid does not follow the count: write it for as many as came.</p>
      </noscript>
      <FormField state={state} name="receivedOn" id="delivery-day" label="Received on">
        {(wiring) => <input {...wiring} type="date" defaultValue={typedIn(state, 'receivedOn', today)} />}
      </FormField>
      <PlaceField state={state} places={places} id="delivery-place" />
      {order && (
        <label className="tick">
          <input
            type="checkbox"
            name="rest"
            value="off"
            defaultChecked={state.status !== 'done' && typedIn(state, 'rest') === 'off'}
          />
          What is missing will not come: close the order
        </label>
      )}
      <p className="soft small">Freight is in no bottle’s cost: it belongs to the order, not to what is in it.</p>
      <FormAnswer state={state} />
      <p>
        <button type="submit" data-main="" disabled={isSending}>
          {isSending ? 'Putting it there…' : 'Put all of it on the shelf'}
        </button>
      </p>
    </form>
  );
}

type OfferLineProps = { state: FormState; offer: OfferIn; row: number; currency: string };

/** One pack of the supplier: none came as long as its count is blank. */
function OfferLine({ state, offer, row, currency }: OfferLineProps) {
  const at = (part: string) => `lots[${row}].${part}`;
  const paid = useRef<HTMLInputElement>(null);
  // What was paid follows the count until somebody writes another figure over it.
  const isOwn = useRef(false);
  const { expected } = offer;
  const first = expected && expected.packs > 0 ? String(expected.packs) : '';
  const costOf = (packs: number): string => {
    if (packs === 0) return '';
    const each = expected?.price ?? null;
    return coins(
      moneyText(each === null ? priceOfPacks(offer, packs) : priceOfPacks({ price: each, breaks: [] }, packs)),
    );
  };
  const count = (text: string) => {
    if (isOwn.current || !paid.current) return;
    const packs = /^\d{1,5}$/.test(text.trim()) ? Number(text) : 0;
    paid.current.value = costOf(packs);
  };
  return (
    <li className={styles.offer}>
      <PackTold offer={offer} currency={currency} />
      <input type="hidden" name={at('offer')} value={offer.id} />
      <FormField state={state} name={at('count')} label="How many">
        {(wiring) => (
          <input
            {...wiring}
            data-count=""
            placeholder=" "
            inputMode="numeric"
            defaultValue={typedIn(state, at('count'), first)}
            onChange={(event) => count(event.target.value)}
            autoComplete="off"
          />
        )}
      </FormField>
      <FormField state={state} name={at('paid')} label={`Paid, ${currency}`}>
        {(wiring) => (
          <input
            {...wiring}
            inputMode="decimal"
            ref={paid}
            defaultValue={typedIn(state, at('paid'), costOf(Number(first)))}
            onChange={(event) => {
              isOwn.current = event.target.value !== '';
            }}
            placeholder="not known"
            autoComplete="off"
          />
        )}
      </FormField>
      <FormField state={state} name={at('expiresOn')} label="Last day printed">
        {(wiring) => <input {...wiring} type="date" defaultValue={typedIn(state, at('expiresOn'))} />}
      </FormField>
    </li>
  );
}

/** A pack by its product: what it costs, or how many of it are expected at which price. */
function PackTold({
  offer: { product, pack, price, breaks, expected },
  currency,
}: Pick<OfferLineProps, 'offer' | 'currency'>) {
  if (expected) {
    return (
      <p className={styles.name}>
        <b>{product}</b>, {pack} · {expected.packs} expected
        {expected.price !== null && `, ordered at ${showMoney(expected.price, currency)}`}
      </p>
    );
  }
  return (
    <p className={styles.name}>
      <b>{product}</b>, {pack} · {showMoney(price, currency)}
      {breaks.map(({ atLeast, price }) => (
        <span key={atLeast} className="soft">
          {' '}
          · {showMoney(price, currency)} from {atLeast}
        </span>
      ))}
    </p>
  );
}

/** "212.000000" as a person writes it, "212.00"; more places only where they say something. */
const coins = (text: string): string => text.replace(/(\.\d\d\d*?)0+$/, '$1');
