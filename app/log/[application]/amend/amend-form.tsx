'use client';

import type { HTMLInputTypeAttribute, ReactNode } from 'react';
import type { AmendScreen, AmendTexts } from '@/lib/views/amend-form';
import type { FormState, Typed } from '@/shared/forms/form-state';
import { FormAnswer, FormField, typedIn } from '../../../_parts/form-field';
import { useSent } from '../../../_parts/use-sent';
import { amendRecordAction } from '../actions';
import styles from '../record.module.css';
import { AboutRecordFields, Reason } from '../record-form';

/** Everything that an amendment may say anew, as it is on record now. */
export function AmendForm({ screen }: { screen: AmendScreen }) {
  const { state, send, isSending, form, commandId } = useSent(
    amendRecordAction,
    `amend ${screen.about.application} ${screen.about.version}`,
  );
  const here = { screen, state };
  return (
    <form ref={form} action={send} className={styles.form}>
      <AboutRecordFields about={screen.about} commandId={commandId} />
      {/* Filled anew after each answer, since a form that was sent is emptied. */}
      <div className={styles.columns} key={state.status === 'idle' ? 'new' : JSON.stringify(state)}>
        <Group title="When and by whom">
          <Line {...here} name="startedAt" label="Started" type="datetime-local" />
          <Line {...here} name="endedAt" label="Ended" type="datetime-local" hint="Empty: it is still running." />
          <Line {...here} name="mixedAt" label="Mixed" type="datetime-local" />
          <Line {...here} name="by" label="Who sprayed" />
        </Group>
        <Where {...here} />
        <WentIn {...here} />
        <Group title="The spray">
          <Line {...here} name="sprayed" label="How much was mixed" hint="Such as 2 gal." />
          <Line {...here} name="leftover" label="How much was left over" hint="Such as 100 mL." />
          <Line {...here} name="leftoverWent" label="What became of it" />
          <Line {...here} name="conditions" label="Conditions" hint="Weather, or the house: calm, shaded." />
          <Line
            {...here}
            name="temperature"
            label={screen.units === 'us' ? 'Temperature, °F' : 'Temperature, °C'}
            hint={screen.units === 'us' ? 'Such as 65, or 18.5 C.' : 'Such as 18.5, or 65 F.'}
          />
          <Line {...here} name="pH" label="pH, as measured" />
        </Group>
      </div>
      <Reason state={state} id="reason" label="Why it is amended" hint="Such as: wrong bench. It stays beside it." />
      <FormAnswer state={state} />
      <p>
        <button type="submit" data-main="" disabled={isSending}>
          {isSending ? 'Writing it down…' : 'Write the amendment'}
        </button>
      </p>
    </form>
  );
}

type Here = { screen: AmendScreen; state: FormState };

function Group({ title, children }: { title: string; children: ReactNode }) {
  return (
    <fieldset className={styles.group}>
      <legend>{title}</legend>
      {children}
    </fieldset>
  );
}

type LineProps = Here & {
  name: keyof AmendTexts;
  label: string;
  hint?: string;
  type?: HTMLInputTypeAttribute;
};

function Line({ screen, state, name, label, hint, type = 'text' }: LineProps) {
  return (
    <FormField state={state} name={name} label={label} hint={hint}>
      {(wiring) => (
        <input {...wiring} type={type} defaultValue={typedIn(state, name, screen.texts[name])} autoComplete="off" />
      )}
    </FormField>
  );
}

const SUGGESTED = 'Not on record. This is what stands there today: make it what stood there then.';

function Where({ screen, state }: Here) {
  const chosen = listed(state, 'bench') ?? screen.benches.filter((bench) => bench.chosen).map(({ id }) => id);
  const fault = state.status === 'invalid' ? state.fields.bench : undefined;
  return (
    <Group title="Where">
      <div>
        {screen.benches.map(({ id, name }) => (
          <label key={id} className="tick">
            <input type="checkbox" name="bench[]" value={id} defaultChecked={chosen.includes(id)} /> {name}
          </label>
        ))}
        {fault && <p className={styles.fault}>{fault}</p>}
      </div>
      <Treated screen={screen} state={state} name="crop" label="Crop or site treated" />
      <Treated screen={screen} state={state} name="location" label="Location" />
      <Line screen={screen} state={state} name="plants" label="Which plants, when not all" />
    </Group>
  );
}

type TreatedProps = Here & { name: 'crop' | 'location'; label: string };

/** What was treated, or where, in a line or two; what stands there today where neither is on record. */
function Treated({ screen, state, name, label }: TreatedProps) {
  return (
    <FormField state={state} name={name} label={label} hint={screen.suggested[name] && SUGGESTED}>
      {(wiring) => <textarea {...wiring} rows={3} defaultValue={typedIn(state, name, screen.texts[name])} />}
    </FormField>
  );
}

function WentIn({ screen, state }: Here) {
  const [amounts, gone] = [listed(state, 'amount'), listed(state, 'gone') ?? []];
  const fault = state.status === 'invalid' ? state.fields.amount : undefined;
  return (
    <Group title="What went in">
      <FormField
        state={state}
        name="recipe"
        label="Recipe"
        hint="With another recipe, what it says counts as what went in."
      >
        {(wiring) => (
          <Select wiring={wiring} choices={screen.recipes} chosen={typedIn(state, 'recipe', screen.texts.recipe)} />
        )}
      </FormField>
      <div className={styles.lines}>
        {screen.products.map(({ id, name, amount }, at) => (
          <div key={id} className={styles.amountLine}>
            <input type="hidden" name="product[]" value={id} />
            <div>
              <label htmlFor={`amount-${at}`}>{name}</label>
              <input id={`amount-${at}`} name="amount[]" defaultValue={amounts?.[at] ?? amount} autoComplete="off" />
            </div>
            <label className="tick">
              <input type="checkbox" name="gone[]" value={id} defaultChecked={gone.includes(id)} /> did not go in
            </label>
          </div>
        ))}
        {fault && <p className={styles.fault}>{fault}</p>}
      </div>
      <FormField state={state} name="moreProduct" label="Went in besides">
        {(wiring) => (
          <Select
            wiring={wiring}
            choices={[{ id: '', name: 'nothing' }, ...screen.others]}
            chosen={typedIn(state, 'moreProduct')}
          />
        )}
      </FormField>
      <Line screen={screen} state={state} name="moreAmount" label="How much of that" />
      <p className="soft small">Bottles stay as they are: what was drawn is put right on the bottle.</p>
    </Group>
  );
}

type SelectProps = { wiring: object; choices: { id: string; name: string }[]; chosen: string };

const Select = ({ wiring, choices, chosen }: SelectProps) => (
  <select {...wiring} defaultValue={chosen}>
    {choices.map(({ id, name }) => (
      <option key={id} value={id}>
        {name}
      </option>
    ))}
  </select>
);

/** What was chosen or typed in a field that repeats, before the form was sent; null when it was not sent yet. */
function listed(state: FormState, name: string): string[] | null {
  const typed: Typed | null = state.status === 'invalid' || state.status === 'refused' ? state.typed : null;
  return typed && Object.keys(typed).length > 0 ? [typed[name] ?? []].flat() : null;
}
