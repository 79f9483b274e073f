'use client';

import type { ToolsFormScreen } from '@/lib/views/settings-form';
import { BLANK_MEASURE, BLANK_SPRAYER, type ToolsDraft, toolsInFields } from '@/shared/forms/tools';
import { FormField } from '../../_parts/form-field';
import { ThingForm } from '../../_parts/thing-form';
import parts from '../../_parts/thing-form.module.css';
import { type ThingForm as Form, useThingForm } from '../../_parts/use-thing-form';
import { saveToolsAction } from '../shop/actions';
import { ToolRows } from './tool-rows';

const SPRAYER = [
  { column: 'name', label: 'Sprayer', like: 'backpack' },
  { column: 'capacity', label: 'A fill holds', like: '2 gal' },
  { column: 'lossPerFill', label: 'Lost in a fill', like: '100 mL' },
  { column: 'measuringStep', label: 'Measuring step', like: '0.5 L' },
] as const;

const MEASURE = [
  { column: 'name', label: 'Measure', like: '10 mL syringe' },
  { column: 'holds', label: 'Holds', like: '10 mL' },
  { column: 'step', label: 'Reads to', like: '0.5 mL' },
] as const;

const withRoom = (draft: ToolsDraft): ToolsDraft => ({
  ...draft,
  sprayers: [...draft.sprayers, BLANK_SPRAYER],
  measures: [...draft.measures, BLANK_MEASURE],
});

/** The shop's sprayers and measures, its drop, and the conductivity that its leaves bear. */
export function ToolsForm({ screen }: { screen: ToolsFormScreen }) {
  const form = useThingForm({
    ...{ what: 'tools', thing: screen.thing, action: saveToolsAction, initial: withRoom(screen.tools) },
    inFields: toolsInFields,
  });
  const { state, draft, change } = form;
  return (
    <ThingForm form={form} save="Save the tools" back="/setup">
      <ToolRows
        {...{
          state,
          list: 'sprayers',
          title: 'Sprayers',
          columns: SPRAYER,
          rows: draft.sprayers,
          blank: BLANK_SPRAYER,
        }}
        add="Add a sprayer"
        onChange={(next) => change((typed) => ({ ...typed, sprayers: next(typed.sprayers) }))}
      />
      <ToolRows
        {...{
          state,
          list: 'measures',
          title: 'Measures',
          columns: MEASURE,
          rows: draft.measures,
          blank: BLANK_MEASURE,
        }}
        add="Add a measure"
        onChange={(next) => change((typed) => ({ ...typed, measures: next(typed.measures) }))}
      />
      <Limits form={form} />
    </ThingForm>
  );
}

function Limits({ form: { state, draft, change } }: { form: Form<ToolsDraft> }) {
  const field = (name: 'dropMl' | 'conductivityLimit') => ({
    value: draft[name],
    onChange: ({ target }: { target: { value: string } }) => {
      const { value } = target;
      change((typed) => ({ ...typed, [name]: value }));
    },
    inputMode: 'decimal' as const,
    autoComplete: 'off',
  });
  return (
    <section aria-labelledby="limits">
      <h2 id="limits">Drop and burn</h2>
      <div className={parts.pair}>
        <FormField state={state} name="dropMl" label="A drop, mL" hint="Count the drops of 1 mL. Usual is 0.05.">
          {(wiring) => <input {...wiring} {...field('dropMl')} />}
        </FormField>
        <FormField
          state={state}
          name="conductivityLimit"
          label="Burn caution above, mS/cm"
          hint="Empty: nothing is said of it."
        >
          {(wiring) => <input {...wiring} {...field('conductivityLimit')} />}
        </FormField>
      </div>
    </section>
  );
}
