'use client';

import { useActionState, useRef } from 'react';
import type { StockSolutionScreen } from '@/lib/views/stock-solution';
import { type FormState, IDLE } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useHalfTyped } from '../../_parts/use-half-typed';
import { makeStockSolutionAction } from './actions';
import styles from './stock.module.css';

/** What is taken from which bottles, up to what volume, and how long the solution may be used. */
export function StockForm({ screen }: { screen: StockSolutionScreen }) {
  const [state, send, isSending] = useActionState(makeStockSolutionAction, IDLE);
  const form = useRef<HTMLFormElement>(null);
  useHalfTyped(form, `stock-solution ${screen.product.id}`, state.status === 'done');
  const { commandId, shop, product, makeUpTo, places } = screen;
  return (
    <form ref={form} action={send} className={styles.form}>
      <HiddenFields of={{ commandId, shop, product: product.id }} />
      <Takes screen={screen} state={state} />
      <FormField
        state={state}
        name="makeUpTo"
        label="Made up with water to"
        hint="Half the water first, then the product, stirred until it is gone, then water up to this."
      >
        {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'makeUpTo', makeUpTo)} />}
      </FormField>
      <FormField
        state={state}
        name="useByDays"
        label="May be used for how many days"
        hint="As the label or whoever makes it says. Left empty, its last day is not known, and it is flagged."
      >
        {(wiring) => <input {...wiring} inputMode="numeric" defaultValue={typedIn(state, 'useByDays')} />}
      </FormField>
      <FormField state={state} name="keptIn" label="Kept where">
        {(wiring) => (
          <>
            <input {...wiring} list="places-kept" defaultValue={typedIn(state, 'keptIn')} />
            <datalist id="places-kept">
              {places.map((place) => (
                <option key={place} value={place} />
              ))}
            </datalist>
          </>
        )}
      </FormField>
      <FormAnswer state={state} />
      <p>
        <button type="submit" data-main="" disabled={isSending || state.status === 'done'}>
          {isSending ? 'Making it…' : 'It is made: put it on the shelf'}
        </button>
      </p>
    </form>
  );
}

function Takes({ screen: { bottles, product }, state }: { screen: StockSolutionScreen; state: FormState }) {
  const such = product.form === 'liquid' ? 'such as 20 mL' : 'such as 3.6 g';
  return (
    <fieldset className={styles.takes}>
      <legend>Taken from</legend>
      {bottles.map(({ field, label, leftText, take, past }) => (
        <FormField
          key={field}
          state={state}
          name={field}
          label={label}
          hint={past ? `${leftText} left; its last usable day is past` : `${leftText} left; ${such}`}
        >
          {(wiring) => <input {...wiring} defaultValue={typedIn(state, field, take)} />}
        </FormField>
      ))}
    </fieldset>
  );
}
