'use client';

import { useActionState, useRef } from 'react';
import type { OrderFormScreen } from '@/lib/views/orders';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import type { Fields } from '@/shared/forms/rows';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useCommandId } from '../../_parts/use-command-id';
import { saveOrderAction } from './actions';
import { FoundAgain } from './found-again';
import styles from './order-form.module.css';
import { OfferToOrderLine } from './order-line';
import { firstOf, rowsOf } from './order-rows';
import { OrderTotals } from './order-totals';
import { newOrderHref, useWritten } from './use-written';

type OrderFormProps = {
  screen: OrderFormScreen;
  /** What stands in the address, such as a plan's lines, by offer. */
  asked: Fields;
};

/** An order to one supplier: packs beside each of its offers, what they come to, and when they should come. */
export function OrderForm({ screen, asked }: OrderFormProps) {
  const { shopId, formId, supplier, order, today, ways } = screen;
  const [state, send, isSending] = useActionState(saveOrderAction, IDLE);
  const done = state.status === 'done' ? state : false;
  const commandId = useCommandId(done);
  const form = useRef<HTMLFormElement>(null);
  const rows = rowsOf(screen, asked);
  const first = firstOf(screen, asked, rows);
  const named = rows.map(({ offer: { id, product, pack }, which }) => ({
    offer: id,
    which,
    name: `${product}, ${pack}`,
  }));
  const begun = { shop: shopId, supplier, standing: order?.standing ?? '', today, rows: named, first };
  const written = useWritten(form, begun, done);
  const hidden = {
    ...{ commandId: commandId || formId, shop: shopId, supplier: supplier.id },
    ...{ id: order?.file.id ?? '', standing: written.standing, currency: ways.currency },
  };
  if (done && !order) return <Placed state={state} supplier={supplier.id} />;
  return (
    <form ref={form} action={send} onInput={written.look} className={styles.form} autoComplete="off">
      <HiddenFields of={hidden} />
      <FoundAgain written={written} isChange={order !== null} today={today} />
      <ul className={styles.lines}>
        {rows.map(({ offer, which }, row) => (
          <OfferToOrderLine key={`${offer.id} ${which}`} {...{ state, offer, row, first, currency: ways.currency }} />
        ))}
      </ul>
      <OrderTotals screen={screen} {...written} />
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

/** A new order that was placed. Its form is gone, so that nobody places it a second time. */
function Placed({ state, supplier }: { state: FormState; supplier: string }) {
  return (
    <>
      <FormAnswer state={state} />
      <p className="apart">
        <a href={newOrderHref(supplier)}>Write another order to them</a>
      </p>
    </>
  );
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
