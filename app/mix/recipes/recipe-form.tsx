'use client';

import type { RecipeFormScreen } from '@/lib/views/recipe-form';
import { BLANK_LINE, movedInOrder, type RecipeDraft, type RecipeLine, recipeInFields } from '@/shared/forms/recipe';
import { FormField } from '../../_parts/form-field';
import { ThingForm } from '../../_parts/thing-form';
import parts from '../../_parts/thing-form.module.css';
import { type ThingForm as Form, useThingForm } from '../../_parts/use-thing-form';
import { saveRecipeAction } from './actions';
import styles from './recipe-form.module.css';
import { RecipeLineFields } from './recipe-line';
import { RecipeOrder } from './recipe-order';
import { RecipeTotals } from './recipe-totals';
import { checkedLineOf, type LiveCheck, useRecipeCheck } from './use-recipe-check';

/** Room to begin with: three lines of a new recipe, and one more than a known one has. */
const withRoom = (draft: RecipeDraft): RecipeDraft => {
  const spare = draft.lines.length === 0 ? 3 : 1;
  return { ...draft, lines: [...draft.lines, ...Array.from({ length: spare }, () => BLANK_LINE)] };
};

/** What was half typed without a line that was put in comes back without it, and the other way round. */
const draftKey = ({ replaced }: RecipeFormScreen): string =>
  replaced ? `recipe with ${replaced.now.product} on line ${replaced.line}` : 'recipe';

/** A recipe as it is typed, with what it comes to beside every line. Without scripts it is an ordinary form. */
export function RecipeForm({ screen }: { screen: RecipeFormScreen }) {
  const initial = withRoom(screen.draft);
  const form = useThingForm({
    ...{ what: draftKey(screen), thing: screen.thing, action: saveRecipeAction, initial },
    inFields: recipeInFields,
  });
  const { draft, change } = form;
  const lines = { ...screen.draft, lines: initial.lines };
  const first = {
    draft: lines,
    check: { ...screen.check, lines: lines.lines.map((_, at) => screen.check.lines[at] ?? null) },
  };
  const live = useRecipeCheck(screen.thing.shop, draft, first);
  const setLines = (next: (lines: RecipeLine[]) => RecipeLine[]) =>
    change((typed) => ({ ...typed, lines: next(typed.lines) }));
  const isNew = screen.thing.id === '';
  const back = isNew ? '/mix/recipes' : `/mix/recipes/${encodeURIComponent(screen.thing.id)}`;
  return (
    <ThingForm form={form} save={isNew ? 'Save this recipe' : 'Save as a new version'} back={back}>
      <RecipeHead form={form} otherNames={screen.otherNames} />
      <div className={styles.columns}>
        <RecipeLines form={form} screen={screen} live={live} setLines={setLines} />
        <div className={styles.beside}>
          <RecipeTotals live={live} ways={screen.ways} fill={screen.fill} />
          <RecipeOrder
            order={live.check.order}
            isBehind={live.isBehind}
            onMove={(place, by) => setLines((now) => movedInOrder(now, live.check.order, place, by))}
            onUsual={(number) => setLines((now) => replaced(now, number, { order: '' }))}
          />
        </div>
      </div>
    </ThingForm>
  );
}

const replaced = (lines: RecipeLine[], number: number, fields: Partial<RecipeLine>): RecipeLine[] =>
  lines.map((line, at) => (at === number ? { ...line, ...fields } : line));

function RecipeHead({ form, otherNames }: { form: Form<RecipeDraft>; otherNames: string[] }) {
  const { state, draft, change } = form;
  const isTaken = otherNames.some((name) => name.trim().toLowerCase() === draft.name.trim().toLowerCase());
  const field = (name: 'name' | 'targetPh' | 'useWithinHours') => ({
    value: draft[name],
    onChange: (event: { target: { value: string } }) => {
      const { value } = event.target;
      change((typed) => ({ ...typed, [name]: value }));
    },
  });
  return (
    <>
      <FormField
        state={state}
        name="name"
        label="What it is called"
        hint={isTaken ? 'Another recipe has this name already. Choose one that tells them apart.' : undefined}
      >
        {(wiring) => <input {...wiring} {...field('name')} autoComplete="off" />}
      </FormField>
      <div className={parts.pair}>
        <FormField state={state} name="targetPh" label="Target pH" hint="Empty: it is not corrected.">
          {(wiring) => <input {...wiring} {...field('targetPh')} inputMode="decimal" autoComplete="off" />}
        </FormField>
        <FormField state={state} name="useWithinHours" label="Use within, hours" hint="Empty: not known.">
          {(wiring) => <input {...wiring} {...field('useWithinHours')} inputMode="decimal" autoComplete="off" />}
        </FormField>
      </div>
    </>
  );
}

type RecipeLinesProps = {
  form: Form<RecipeDraft>;
  screen: RecipeFormScreen;
  live: LiveCheck;
  setLines: (next: (lines: RecipeLine[]) => RecipeLine[]) => void;
};

function RecipeLines({ form: { state, draft }, screen, live, setLines }: RecipeLinesProps) {
  return (
    <section aria-labelledby="goes-in">
      <h2 id="goes-in" className={styles.heading}>
        What goes in
      </h2>
      <ol className={parts.rows}>
        {draft.lines.map((line, number) => (
          <RecipeLineFields
            // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place in the recipe; all of it is in the draft.
            key={number}
            {...{ state, line, number, choices: screen.choices, ways: screen.ways, fill: screen.fill }}
            checked={checkedLineOf(live, line, number)}
            onChange={(fields) => setLines((now) => replaced(now, number, fields))}
            onTakeOut={() => setLines((now) => now.filter((_, at) => at !== number))}
          />
        ))}
      </ol>
      <p className={`${styles.add} ${parts.scripted}`}>
        <button type="button" onClick={() => setLines((now) => [...now, BLANK_LINE])}>
          Add a line
        </button>
      </p>
    </section>
  );
}
