'use client';

import { DISCARD_REASONS } from '@/shared/forms/bottle';
import type { FormState } from '@/shared/forms/form-state';
import { FormField, typedIn } from '../../../../_parts/form-field';
import { takeBackAction } from './actions';
import { type About, BottleForm } from './bottle-form';
import styles from './bottle-page.module.css';
import { discardFromBottleAction, drawFromBottleAction } from './stock-actions';

type StockFormProps = { about: About; example: string };

/** Draws from a bottle for something that no spraying says. */
export function DrawForm({ about, example }: StockFormProps) {
  return (
    <BottleForm
      about={about}
      action={drawFromBottleAction}
      name="draw"
      title="Took some for a spray"
      button="Note the draw"
    >
      {(state) => (
        <>
          <FormField state={state} name="amount" id="draw-amount" label="How much" hint={`Such as ${example}.`}>
            {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'amount')} autoComplete="off" />}
          </FormField>
          <FormField
            state={state}
            name="reason"
            id="draw-reason"
            label="What for"
            hint="Such as: spot spray on the ferns."
          >
            {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'reason')} />}
          </FormField>
          <When state={state} id="draw-when" />
        </>
      )}
    </BottleForm>
  );
}

/** Throws away what will not be used, or sends it back. */
export function DiscardForm({ about, example }: StockFormProps) {
  return (
    <BottleForm
      about={about}
      action={discardFromBottleAction}
      name="discard"
      title="Thrown away or sent back"
      button="Take it off the shelf"
    >
      {(state) => <DiscardFields key={state.status} state={state} example={example} />}
    </BottleForm>
  );
}

function DiscardFields({ state, example }: { state: FormState; example: string }) {
  const much = typedIn(state, 'much', 'all');
  return (
    <>
      <fieldset>
        <legend className={styles.legend}>How much</legend>
        <label className="tick">
          <input type="radio" name="much" value="all" defaultChecked={much === 'all'} /> all that is left
        </label>
        <label className="tick">
          <input type="radio" name="much" value="some" defaultChecked={much === 'some'} /> this much
        </label>
      </fieldset>
      <FormField state={state} name="amount" id="discard-amount" label="Amount" hint={`Such as ${example}.`}>
        {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'amount')} autoComplete="off" />}
      </FormField>
      <FormField state={state} name="why" id="discard-why" label="Why">
        {(wiring) => (
          <select {...wiring} defaultValue={typedIn(state, 'why', 'expired')}>
            {[...DISCARD_REASONS, 'other'].map((why) => (
              <option key={why} value={why}>
                {why === 'returned' ? 'returned to the supplier' : why}
              </option>
            ))}
          </select>
        )}
      </FormField>
      <FormField state={state} name="words" id="discard-words" label="In your words" hint="Needed only for “other”.">
        {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'words')} />}
      </FormField>
      <When state={state} id="discard-when" />
    </>
  );
}

function When({ state, id }: { state: FormState; id: string }) {
  return (
    <FormField state={state} name="when" id={id} label="When" hint="Empty: now.">
      {(wiring) => <input {...wiring} type="datetime-local" defaultValue={typedIn(state, 'when')} />}
    </FormField>
  );
}

type TakeBackProps = { about: About; line: number; movement: string; reversible: boolean };

/** Takes a line of the ledger back. */
export function TakeBackForm({ about, line, movement, reversible }: TakeBackProps) {
  return (
    <BottleForm
      about={about}
      action={takeBackAction}
      name={`back-${movement}`}
      title={`Take line ${line} back`}
      button="Take it back"
      isOver={!reversible}
    >
      {(state) => (
        <>
          <input type="hidden" name="movement" value={movement} />
          <FormField state={state} name="reason" id={`why-${line}`} label="Why" hint="Such as: wrong bottle.">
            {(wiring) => <input {...wiring} defaultValue={typedIn(state, 'reason')} />}
          </FormField>
        </>
      )}
    </BottleForm>
  );
}
