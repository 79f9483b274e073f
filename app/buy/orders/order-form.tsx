'use client';

import { type RefObject, useEffect, useState } from 'react';
import type { OrderFormScreen } from '@/lib/views/orders';
import { fieldsOfOrder, orderTyped } from '@/shared/forms/order';
import type { Fields } from '@/shared/forms/rows';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useSent } from '../../_parts/use-sent';
import { saveOrderAction } from './actions';
import styles from './order-form.module.css';
import { OfferToOrderLine } from './order-line';
import { OrderTotals } from './order-totals';

type OrderFormProps = {
  screen: OrderFormScreen;
  /** What stands in the address, such as a plan's lines, by offer. */
  asked: Fields;
};

/** An order to one supplier: packs beside each of its offers, what they come to, and when they should come. */
export function OrderForm({ screen, asked }: OrderFormProps) {
  const { shopId, formId, supplier, offers, order, ways } = screen;
  const key = `order ${shopId} ${order?.file.id ?? `new ${supplier.id}`}`;
  const { state, send, isSending, form, commandId } = useSent(saveOrderAction, key);
  const first = firstOf(screen, asked);
  const [sums, look] = useTyped(form, first);
  const hidden = {
    ...{ commandId: commandId || formId, shop: shopId, supplier: supplier.id },
    ...{ id: order?.file.id ?? '', standing: order?.standing ?? '' },
  };
  return (
    <form ref={form} action={send} onInput={look} className={styles.form}>
      <HiddenFields of={hidden} />
      <ul className={styles.lines}>
        {offers.map((offer, row) => (
          <OfferToOrderLine key={offer.id} {...{ state, offer, row, first, currency: ways.currency }} />
        ))}
      </ul>
      <OrderTotals screen={screen} typed={sums} />
      <Aside state={state} screen={screen} first={first} />
      <FormAnswer state={state} />
      <p className={styles.buttons}>
        <button type="submit" data-main="" disabled={isSending}>
          {isSending ? 'Noting it…' : order ? 'Save the order' : 'It is ordered'}
        </button>
        {!order && (
          <button type="submit" formAction="/buy/orders/list" formMethod="get">
            Show the list to send
          </button>
        )}
      </p>
    </form>
  );
}

/** What the fields begin with: the order as it stands, or what the address says, each line at the row of its offer. */
function firstOf({ offers, order }: OrderFormScreen, asked: Fields): Fields {
  const from = order ? fieldsOfOrder(order.file) : asked;
  const { lines } = orderTyped(from).typed;
  const rows = offers.flatMap(({ id }, row) => {
    const line = lines.find((one) => one.offer === id);
    if (!line) return [];
    const price = from[`lines[${line.row}].price`] ?? '';
    return [
      [`lines[${row}].offer`, id],
      [`lines[${row}].count`, String(line.count)],
      [`lines[${row}].price`, price],
    ];
  });
  const { placedOn = '', expectedOn = '', freight = '', note = '' } = from;
  return { placedOn, expectedOn, freight, note, ...Object.fromEntries(rows) };
}

/** What is typed just now, read again at every stroke; to begin with, what the fields begin with. */
function useTyped(form: RefObject<HTMLFormElement | null>, first: Fields) {
  const [fields, setFields] = useState(first);
  const look = () => {
    if (!form.current) return;
    const typed = [...new FormData(form.current)].map(([name, value]) => [name, String(value)]);
    setFields(Object.fromEntries(typed));
  };
  // What was half typed before a reload is put back without anybody typing.
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at once, when the page is alive.
  useEffect(look, []);
  return [orderTyped(fields).typed, look] as const;
}

type AsideProps = { screen: OrderFormScreen; first: Fields; state: Parameters<typeof FormField>[0]['state'] };

function Aside({ state, screen: { today, ways }, first }: AsideProps) {
  const value = (name: string, otherwise = '') => typedIn(state, name, first[name] || otherwise);
  return (
    <div className={styles.aside}>
      <FormField state={state} name="placedOn" label="Ordered on">
        {(wiring) => <input {...wiring} type="date" defaultValue={value('placedOn', today)} />}
      </FormField>
      <FormField
        state={state}
        name="expectedOn"
        label="Expected on"
        hint="Left empty: as their delivery time has it, in their working days."
      >
        {(wiring) => <input {...wiring} type="date" defaultValue={value('expectedOn')} />}
      </FormField>
      <FormField
        state={state}
        name="freight"
        label={`Freight, ${ways.currency}`}
        hint="Left empty: what they take as a rule."
      >
        {(wiring) => <input {...wiring} inputMode="decimal" defaultValue={value('freight')} autoComplete="off" />}
      </FormField>
      <FormField state={state} name="note" label="Note">
        {(wiring) => <input {...wiring} defaultValue={value('note')} maxLength={500} autoComplete="off" />}
      </FormField>
    </div>
  );
}
