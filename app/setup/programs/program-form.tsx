'use client';

import type { ProgramFormScreen } from '@/lib/views/program-form';
import { type ProgramDraft, programInFields } from '@/shared/forms/program';
import { workMinutesUp } from '@/shared/mix/work-minutes';
import { FormField } from '../../_parts/form-field';
import { movedRow } from '../../_parts/move-row';
import { RowButtons } from '../../_parts/row-buttons';
import { ThingForm } from '../../_parts/thing-form';
import parts from '../../_parts/thing-form.module.css';
import { type ThingForm as Form, useThingForm } from '../../_parts/use-thing-form';
import { saveProgramAction } from './actions';
import { ClosedWhileTyping } from './closed-while-typing';
import { NextDays } from './next-days';
import styles from './program-form.module.css';
import { RepeatFields } from './repeat-fields';

const withRoom = (draft: ProgramDraft): ProgramDraft => ({ ...draft, recipes: [...draft.recipes, ''] });

type ProgramFormProps = { form: Form<ProgramDraft>; screen: ProgramFormScreen };

/** A program as it is typed: recipes in their turn, benches, season, how often; with its next days beside it. */
export function ProgramForm({ screen }: { screen: ProgramFormScreen }) {
  const form = useThingForm({
    ...{ what: 'program', thing: screen.thing, action: saveProgramAction, initial: withRoom(screen.draft) },
    inFields: programInFields,
  });
  const { draft } = form;
  const nameOf = (id: string) => screen.recipes.find((recipe) => recipe.id === id)?.name ?? id;
  const recipes = draft.recipes.filter((id) => id !== '').map(nameOf);
  return (
    <ThingForm form={form} save="Save this program" back="/setup/programs">
      <div className={styles.columns}>
        <div className={styles.column}>
          <Recipes form={form} screen={screen} />
          <Benches form={form} screen={screen} />
        </div>
        <div className={styles.column}>
          <RepeatFields form={form} />
          <Times form={form} screen={screen} />
          <Sprayer form={form} screen={screen} />
          <ClosedWhileTyping form={form} thing={screen.thing} />
          <section aria-labelledby="next" aria-live="polite">
            <h2 id="next">The next five days</h2>
            <NextDays typed={draft} {...{ recipes, today: screen.today, zone: screen.zone, most: 5 }} />
          </section>
        </div>
      </div>
    </ThingForm>
  );
}

function Recipes({ form: { state, draft, change }, screen }: ProgramFormProps) {
  const set = (next: (recipes: string[]) => string[]) =>
    change((typed) => ({ ...typed, recipes: next(typed.recipes) }));
  return (
    <section aria-labelledby="recipes">
      <h2 id="recipes">Recipes</h2>
      <p className="soft small">Several take turns in this order, one each time.</p>
      <ol>
        {draft.recipes.map((chosen, number) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a recipe is its turn.
          <li key={number} className={styles.turn}>
            <FormField state={state} name={`recipes[${number}].recipe`} label={`Turn ${number + 1}`}>
              {(wiring) => (
                <select
                  {...wiring}
                  value={chosen}
                  onChange={({ target }) => set((now) => now.map((id, at) => (at === number ? target.value : id)))}
                >
                  <option value="">choose</option>
                  {screen.recipes.map(({ id, name }) => (
                    <option key={id} value={id}>
                      {name}
                    </option>
                  ))}
                </select>
              )}
            </FormField>
            <RowButtons
              {...{ called: `turn ${number + 1}`, place: number, of: draft.recipes.length }}
              onMove={(by) => set((now) => movedRow(now, number, by))}
              onTakeOut={() => set((now) => now.filter((_, at) => at !== number))}
            />
          </li>
        ))}
      </ol>
      <p className={`apart ${parts.scripted}`}>
        <button type="button" onClick={() => set((now) => [...now, ''])}>
          Add a turn
        </button>
      </p>
    </section>
  );
}

function Benches({ form: { state, draft, change }, screen }: ProgramFormProps) {
  const fault = state.status === 'invalid' ? state.fields.benches : undefined;
  const toggle = (id: string) =>
    change((typed) => ({
      ...typed,
      benches: typed.benches.includes(id) ? typed.benches.filter((one) => one !== id) : [...typed.benches, id],
    }));
  return (
    <fieldset aria-describedby={fault && 'benches-fault'}>
      <legend className={styles.legend}>Benches sprayed together</legend>
      <div className={parts.ticks}>
        {screen.benches.map(({ id, name }, number) => (
          <label key={id} className="tick">
            <input
              type="checkbox"
              name={`benches[${number}].bench`}
              value={id}
              checked={draft.benches.includes(id)}
              onChange={() => toggle(id)}
            />
            {name}
          </label>
        ))}
      </div>
      {fault && (
        <p id="benches-fault" className={styles.fault}>
          {fault}
        </p>
      )}
    </fieldset>
  );
}

const TIMES = [
  { name: 'startsOn', label: 'First day', type: 'date', hint: undefined },
  { name: 'endsOn', label: 'Last day', type: 'date', hint: 'Empty: it goes on.' },
  { name: 'startTime', label: 'Starts at', type: 'time', hint: undefined },
  { name: 'minutes', label: 'Takes, minutes', type: 'text', hint: undefined },
] as const;

type TimesProps = { form: Form<ProgramDraft>; screen: ProgramFormScreen };

/** How long the benches that are ticked would take, as the shop says, with how that comes about. */
function suggestion({ benches, work }: ProgramFormScreen, chosen: readonly string[]): string | undefined {
  const plants = benches.filter(({ id }) => chosen.includes(id)).reduce((sum, bench) => sum + bench.plants, 0);
  const minutes = plants === 0 ? null : workMinutesUp(work, plants);
  if (minutes === null) return undefined;
  return `By its plants ${minutes} min: ${work.minutesPerPlant} min for each of ${plants}, and ${work.minutesPerBatch} min a batch.`;
}

function Times({ form: { state, draft, change }, screen }: TimesProps) {
  return (
    <div className={parts.pair}>
      {TIMES.map(({ name, label, type, hint }) => (
        <FormField
          key={name}
          {...{ state, name, label }}
          hint={name === 'minutes' ? suggestion(screen, draft.benches) : hint}
        >
          {(wiring) => (
            <input
              {...wiring}
              type={type}
              value={draft[name]}
              onChange={({ target }) => change((typed) => ({ ...typed, [name]: target.value }))}
            />
          )}
        </FormField>
      ))}
    </div>
  );
}

/** Asked only where there is a choice. */
function Sprayer({ form: { state, draft, change }, screen: { sprayers } }: ProgramFormProps) {
  const [first] = sprayers;
  if (first === undefined || (sprayers.length === 1 && draft.sprayer === '')) return null;
  return (
    <FormField state={state} name="sprayer" label="Sprayed with">
      {(wiring) => (
        <select
          {...wiring}
          value={draft.sprayer}
          onChange={({ target }) => change((typed) => ({ ...typed, sprayer: target.value }))}
        >
          <option value="">the first sprayer: {first}</option>
          {sprayers.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      )}
    </FormField>
  );
}
