'use client';

import type { RecipeCheck } from '@/lib/engine/mix/recipe-check';
import type { Choice } from '@/lib/views/recipe-form';
import type { FormState } from '@/shared/forms/form-state';
import type { RecipeLine } from '@/shared/forms/recipe';
import { FormField } from '../../_parts/form-field';
import type { Ways } from '../../_parts/shown-text';
import parts from '../../_parts/thing-form.module.css';
import { LineReading } from './line-reading';
import styles from './recipe-form.module.css';

type RecipeLineProps = {
  state: FormState;
  line: RecipeLine;
  number: number;
  choices: Choice[];
  ways: Ways;
  fill: string;
  /** What the shop said to the line as it is typed; undefined while it has not said it yet. */
  checked: RecipeCheck['lines'][number] | undefined;
  onChange: (fields: Partial<RecipeLine>) => void;
  onTakeOut: () => void;
};

/** One line of a recipe: the product, how much of it, for which use; and under it what that comes to. */
export function RecipeLineFields(props: RecipeLineProps) {
  const { state, line, number, choices, ways, fill, checked, onChange, onTakeOut } = props;
  const chosen = choices.find(({ id }) => id === line.product);
  const name = (field: keyof RecipeLine) => `lines[${number}].${field}`;
  return (
    <li className={parts.row} aria-label={`Line ${number + 1}${chosen ? `, ${chosen.name}` : ''}`}>
      <div className={styles.fields}>
        <FormField state={state} name={name('product')} label="Product">
          {(wiring) => (
            <select
              {...wiring}
              value={line.product}
              onChange={({ target }) => onChange({ product: target.value, use: '' })}
            >
              <option value="">choose</option>
              {choices.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </FormField>
        <FormField state={state} name={name('dose')} label="Dose">
          {(wiring) => (
            <input
              {...wiring}
              value={line.dose}
              onChange={({ target }) => onChange({ dose: target.value })}
              placeholder={chosen?.form === 'powder' ? '1.5 g/L' : '2 tsp/gal'}
              autoComplete="off"
              autoCapitalize="none"
              spellCheck={false}
            />
          )}
        </FormField>
        <FormField state={state} name={name('use')} label="Use, by the label">
          {(wiring) => <UseField wiring={wiring} line={line} uses={chosen?.uses ?? []} onChange={onChange} />}
        </FormField>
        <div className={parts.scriptless}>
          <FormField state={state} name={name('order')} label="Its own place in the mix" hint="Empty: the usual one.">
            {(wiring) => (
              <input {...wiring} value={line.order} onChange={({ target }) => onChange({ order: target.value })} />
            )}
          </FormField>
        </div>
      </div>
      <div className={styles.under}>
        <div className={styles.reading} aria-live="polite">
          {checked && <LineReading line={checked} ways={ways} fill={fill} />}
        </div>
        <button type="button" className={styles.out} onClick={onTakeOut} aria-label={`Take out line ${number + 1}`}>
          Take out
        </button>
      </div>
    </li>
  );
}

type UseFieldProps = {
  wiring: object;
  line: RecipeLine;
  uses: string[];
  onChange: RecipeLineProps['onChange'];
};

/** The uses that the label names; and the one that stands there, even where the label does not know it. */
function UseField({ wiring, line, uses, onChange }: UseFieldProps) {
  const isKnown = line.use === '' || uses.includes(line.use);
  return (
    <select {...wiring} value={line.use} onChange={({ target }) => onChange({ use: target.value })}>
      <option value="">{uses.length === 1 ? 'the only rate' : 'not named'}</option>
      {uses.map((use) => (
        <option key={use}>{use}</option>
      ))}
      {!isKnown && <option>{line.use}</option>}
    </select>
  );
}
