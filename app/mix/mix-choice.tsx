import type { MixForm, MixFormBench } from '@/lib/views/mix-form';
import { HiddenFields } from '../_parts/hidden-fields';
import styles from './mix-choice.module.css';

type ChoiceProps = { form: MixForm; button: string };

/** Asks for a mix: what, for which benches or plants or how much, and with which sprayer. It goes to the sheet. */
export function MixChoice({ form, button }: ChoiceProps) {
  const { planned, recipes, recipe, sprayers, sprayer } = form;
  return (
    <form action="/mix/sheet" method="get" className={styles.choice}>
      {planned && <HiddenFields of={{ program: planned.program, on: planned.on }} />}
      <div className={styles.pair}>
        <div>
          <label htmlFor="mix-recipe">Recipe</label>
          <select id="mix-recipe" name="recipe" defaultValue={recipe}>
            {recipes.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </div>
        <div>
          <label htmlFor="mix-sprayer">Sprayer</label>
          <select id="mix-sprayer" name="sprayer" defaultValue={String(sprayer)}>
            {sprayers.map(({ name, holds }, number) => (
              <option key={`${name} ${holds}`} value={number}>
                {name}, {holds}
              </option>
            ))}
          </select>
        </div>
      </div>
      <fieldset className={styles.by}>
        <legend>How much</legend>
        <By form={form} value="benches" label="for whole benches" />
        <By form={form} value="plants" label="just some plants" />
        <By form={form} value="volume" label="a fixed volume" />
        <Benches benches={form.benches} />
        <Plants benches={form.benches} />
        <Volume form={form} />
      </fieldset>
      <button type="submit" data-main="">
        {button}
      </button>
    </form>
  );
}

function By({ form, value, label }: { form: MixForm; value: MixForm['by']; label: string }) {
  return (
    <label className={styles.radio}>
      <input type="radio" name="by" value={value} defaultChecked={form.by === value} />
      {label}
    </label>
  );
}

function Benches({ benches }: { benches: MixFormBench[] }) {
  return (
    <div className={styles.part} data-by="benches">
      <ul className={styles.benches}>
        {benches.map(({ id, name, chosen }) => (
          <li key={id}>
            <label className={styles.radio}>
              <input type="checkbox" name="bench" value={id} defaultChecked={chosen} />
              {name}
            </label>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Plants({ benches }: { benches: MixFormBench[] }) {
  return (
    <div className={styles.part} data-by="plants">
      <ul className={styles.plants}>
        {benches.flatMap((bench) =>
          bench.groups.map(({ field, name, pot, there, count }) => (
            <li key={field}>
              <label htmlFor={field}>
                {name} <span className="soft">{[pot, bench.name].filter(Boolean).join(', ')}</span>
              </label>
              <input id={field} name={field} defaultValue={count} inputMode="numeric" size={4} />
              <span className="soft">of {there}</span>
            </li>
          )),
        )}
      </ul>
    </div>
  );
}

function Volume({ form: { volume, area } }: { form: MixForm }) {
  return (
    <div className={styles.part} data-by="volume">
      <div className={styles.pair}>
        <div>
          <label htmlFor="mix-volume">Volume, such as 2 gal</label>
          <input id="mix-volume" name="volume" defaultValue={volume} />
        </div>
        <div>
          <label htmlFor="mix-area">Ground, only for doses per area</label>
          <input id="mix-area" name="area" defaultValue={area} placeholder="130 sq ft" />
        </div>
      </div>
    </div>
  );
}
