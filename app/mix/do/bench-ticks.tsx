'use client';

import styles from './do.module.css';

type BenchTicksProps = {
  legend: string;
  benches: { id: string; name: string; beside?: string }[];
  ticked: string[];
  tick: (ids: string[]) => void;
};

/** Benches to be ticked. */
export function BenchTicks({ legend, benches, ticked, tick }: BenchTicksProps) {
  return (
    <fieldset className={styles.radios}>
      <legend>{legend}</legend>
      {benches.map(({ id, name, beside }) => (
        <label key={id} className={styles.check}>
          <input
            type="checkbox"
            checked={ticked.includes(id)}
            onChange={({ target }) => tick(target.checked ? [...ticked, id] : ticked.filter((one) => one !== id))}
          />
          <span>
            {name}
            {beside && <span className={styles.beside}>{beside}</span>}
          </span>
        </label>
      ))}
    </fieldset>
  );
}
