'use client';

import { useEffect } from 'react';
import type { ProductFormScreen } from '@/lib/views/product-form';
import type { FormState } from '@/shared/forms/form-state';
import { unknownsOf } from '@/shared/forms/product-unknowns';
import { ThingForm } from '../../_parts/thing-form';
import { useThingForm } from '../../_parts/use-thing-form';
import { saveProductAction } from '../product-actions';
import styles from './product-form.module.css';
import { Sections } from './sections';
import { ChoiceField, TextField, TypingContext, useTyping } from './typed';

const HIDDEN = ['commandId', 'shop', 'id', 'standing'];

/** The form of a product: name, kind and form first, and then only what that kind needs. */
export function ProductForm({ thing, fields }: ProductFormScreen) {
  const form = useThingForm<Record<string, string>>({
    what: 'product',
    thing,
    action: saveProductAction,
    initial: fields,
    inFields: (sent) => Object.fromEntries(Object.entries(sent).filter(([name]) => !HIDDEN.includes(name))),
  });
  const { draft, change, state } = form;
  useFaultInSight(state);
  const set = (name: string, value: string) => change((before) => ({ ...before, [name]: value }));
  const back = thing.id === '' ? '/shelf' : `/shelf/${encodeURIComponent(thing.id)}`;
  return (
    <ThingForm form={form} save={thing.id === '' ? 'Put it on the shelf' : 'Keep these changes'} back={back}>
      <TypingContext value={{ draft, set, state, unknowns: unknownsOf(draft) }}>
        <div className={styles.first}>
          <TextField name="name" label="What it says on the bottle" />
          <KeepBoth />
          <div className={styles.pair}>
            <ChoiceField name="kind" label="What it is for" choices={KINDS} />
            <ChoiceField name="form" label="Liquid or powder" choices={FORMS} />
          </div>
        </div>
        <div>
          <Sections change={change} isNew={thing.id === ''} />
        </div>
      </TypingContext>
    </ThingForm>
  );
}

const CHOOSE = ['', 'choose …'] as const;
const KINDS = [
  CHOOSE,
  ...['nutrient', 'biostimulant', 'insecticide', 'miticide', 'insecticide/miticide', 'fungicide', 'surfactant'].map(
    (kind) => [kind, kind] as const,
  ),
  ['pH adjuster', 'pH adjuster'],
  ['other', 'other'],
] as const;
const FORMS = [CHOOSE, ['liquid', 'liquid'], ['powder', 'powder']] as const;

/** A second product of one name is asked about once, since it is mostly a slip. */
function KeepBoth() {
  const { draft, set, state } = useTyping();
  const asked = questionIn(state);
  if (!asked && draft.keepBoth !== 'yes') return <input type="hidden" name="keepBoth" value="" />;
  return (
    <div>
      {asked && (
        <p id="keepBoth-fault" className={styles.asked}>
          {asked}
        </p>
      )}
      <label className="tick">
        <input
          type="checkbox"
          name="keepBoth"
          value="yes"
          checked={draft.keepBoth === 'yes'}
          onChange={(event) => set('keepBoth', event.target.checked ? 'yes' : '')}
          aria-describedby={asked && 'keepBoth-fault'}
        />
        Yes, keep both under this name
      </label>
    </div>
  );
}

function questionIn(state: FormState): string | undefined {
  if (state.status === 'invalid') return state.fields.keepBoth;
  return state.status === 'refused' ? state.faults.find(({ path }) => path === 'keepBoth')?.message : undefined;
}

/** After a form came back, the first field that was filled in wrong is what the person is led to. */
function useFaultInSight(state: FormState): void {
  useEffect(() => {
    if (state.status !== 'invalid') return;
    const wrong = document.querySelector<HTMLElement>('[aria-invalid="true"], [name="keepBoth"]:not([type="hidden"])');
    wrong?.focus();
  }, [state]);
}
