'use client';

import type { BenchFormScreen } from '@/lib/views/bench-form';
import { type BenchDraft, BLANK_PLANTS, benchInFields, type PlantsTyped } from '@/shared/forms/bench';
import type { FormState } from '@/shared/forms/form-state';
import { FormField } from '../../_parts/form-field';
import { ThingForm } from '../../_parts/thing-form';
import parts from '../../_parts/thing-form.module.css';
import { type ThingForm as Form, useThingForm } from '../../_parts/use-thing-form';
import { saveBenchAction } from './actions';
import { PlantsFields } from './plants-fields';

const withRoom = (draft: BenchDraft): BenchDraft => ({ ...draft, plants: [...draft.plants, BLANK_PLANTS] });

/** A bench as it is typed: where it stands, how large it is, and what stands on it. */
export function BenchForm({ screen }: { screen: BenchFormScreen }) {
  const form = useThingForm({
    ...{ what: 'bench', thing: screen.thing, action: saveBenchAction, initial: withRoom(screen.draft) },
    inFields: benchInFields,
  });
  const { state, draft, change } = form;
  const setPlants = (next: (plants: PlantsTyped[]) => PlantsTyped[]) =>
    change((typed) => ({ ...typed, plants: next(typed.plants) }));
  return (
    <ThingForm form={form} save="Save this bench" back="/setup/benches">
      <BenchHead form={form} otherNames={screen.otherNames} />
      <section aria-labelledby="plants">
        <h2 id="plants">What stands on it</h2>
        <ol className={parts.rows}>
          {draft.plants.map((plants, number) => (
            <PlantsFields
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place on the bench; all of it is in the draft.
              key={number}
              {...{ state, plants, number }}
              onChange={(fields) =>
                setPlants((now) => now.map((row, at) => (at === number ? { ...row, ...fields } : row)))
              }
              onTakeOut={() => setPlants((now) => now.filter((_, at) => at !== number))}
            />
          ))}
        </ol>
        <p className={`apart ${parts.scripted}`}>
          <button type="button" onClick={() => setPlants((now) => [...now, BLANK_PLANTS])}>
            Add plants
          </button>
        </p>
      </section>
    </ThingForm>
  );
}

function BenchHead({ form, otherNames }: { form: Form<BenchDraft>; otherNames: string[] }) {
  const { state, draft, change } = form;
  const set = (fields: Partial<BenchDraft>) => change((typed) => ({ ...typed, ...fields }));
  const isTaken = otherNames.some((name) => name.trim().toLowerCase() === draft.name.trim().toLowerCase());
  return (
    <>
      <Typed {...{ state, draft, set }} name="name" label="What it is called" hint={isTaken ? TAKEN : undefined} />
      <Typed
        {...{ state, draft, set }}
        name="place"
        label="Where it stands"
        hint="For the record: house 2, north side."
      />
      <div>
        <Tick name="customers" is={draft.customers} onChange={(customers) => set({ customers })}>
          Customers can reach it
        </Tick>
        <Tick name="enclosed" is={draft.enclosed} onChange={(enclosed) => set({ enclosed })}>
          It stands in an enclosed space
        </Tick>
      </div>
      <div className={parts.pair}>
        <Typed {...{ state, draft, set }} name="area" label="Area" hint={AREA} />
        <Typed
          {...{ state, draft, set, inputMode: 'decimal' }}
          name="coverage"
          label="Coverage"
          hint="1 is usual; 1.1 sprays a tenth more."
        />
      </div>
      <Typed {...{ state, draft, set, type: 'date' }} name="harvestOn" label="Next harvest or sale" hint={HARVEST} />
    </>
  );
}

type TypedProps = {
  state: FormState;
  draft: BenchDraft;
  set: (fields: Partial<BenchDraft>) => void;
  name: Exclude<keyof BenchDraft, 'plants'>;
  label: string;
  hint?: string;
  type?: 'text' | 'date';
  inputMode?: 'decimal';
};

function Typed({ state, draft, set, name, label, hint, type = 'text', inputMode }: TypedProps) {
  return (
    <FormField {...{ state, name, label, hint }}>
      {(wiring) => (
        <input
          {...{ ...wiring, type, inputMode }}
          value={draft[name]}
          onChange={({ target }) => set({ [name]: target.value })}
          autoComplete="off"
        />
      )}
    </FormField>
  );
}

const AREA = 'Such as 130 sq ft or 12 m2. Doses by area need it.';
const HARVEST = 'Sprayings too close before it, by the label, are flagged. Leave it empty when there is no such day.';
const TAKEN = 'Another bench has this name already. Choose one that tells them apart.';

type TickProps = { name: string; is: string; onChange: (is: string) => void; children: string };

function Tick({ name, is, onChange, children }: TickProps) {
  return (
    <label className="tick">
      <input
        type="checkbox"
        name={name}
        value="yes"
        checked={is !== ''}
        onChange={({ target }) => onChange(target.checked ? 'yes' : '')}
      />
      {children}
    </label>
  );
}
