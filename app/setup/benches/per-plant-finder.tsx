'use client';

import { useState } from 'react';
import type { LeavesTyped, PerPlant, TrialTyped } from '@/lib/engine/bench/spray-trials';
import { showNumber } from '@/shared/measure/show';
import styles from './bench-form.module.css';
import { usePerPlant } from './use-per-plant';

const TRIAL: TrialTyped = { plants: '', putIn: '', left: '' };
const LEAVES: LeavesTyped = { areaCm2: '', sides: '2', mlPer100Cm2: '', source: '' };

/** Finds out what one plant takes: by spraying a few and noting what is gone, or by its leaves. Fields here are not sent. */
export function PerPlantFinder({ called, onFound }: FinderProps) {
  const [trials, setTrials] = useState([TRIAL]);
  const found = usePerPlant({ trials });
  const setTrial = (number: number, fields: Partial<TrialTyped>) =>
    setTrials((now) => now.map((trial, at) => (at === number ? { ...trial, ...fields } : trial)));
  return (
    <details className={styles.finder}>
      <summary>Find the mL per plant</summary>
      <p className="soft small">Spray a few plants to run-off with a known amount, then measure what is left.</p>
      {trials.map((trial, number) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: trials are only ever added at the end.
        <fieldset key={number} className={styles.trial} aria-label={`Trial ${number + 1} on ${called}`}>
          <Small label="Plants sprayed" value={trial.plants} onChange={(plants) => setTrial(number, { plants })} />
          <Small label="Put in" value={trial.putIn} like="1 L" onChange={(putIn) => setTrial(number, { putIn })} />
          <Small label="Left" value={trial.left} like="640 mL" onChange={(left) => setTrial(number, { left })} />
        </fieldset>
      ))}
      <Found found={found} onFound={onFound} />
      <button type="button" onClick={() => setTrials((now) => [...now, TRIAL])}>
        Another trial
      </button>
      <ByLeaves called={called} onFound={onFound} />
    </details>
  );
}

type FinderProps = { called: string; onFound: (ml: number) => void };

function ByLeaves({ called, onFound }: FinderProps) {
  const [leaves, setLeaves] = useState(LEAVES);
  const found = usePerPlant({ leaves });
  const set = (fields: Partial<LeavesTyped>) => setLeaves((now) => ({ ...now, ...fields }));
  return (
    <details>
      <summary>or by its leaves</summary>
      <fieldset className={styles.trial} aria-label={`Leaves of ${called}`}>
        <Small label="Leaf area, one side, cm²" value={leaves.areaCm2} onChange={(areaCm2) => set({ areaCm2 })} />
        <label>
          Sprayed
          <select value={leaves.sides} onChange={({ target }) => set({ sides: target.value === '1' ? '1' : '2' })}>
            <option value="2">both sides</option>
            <option value="1">one side</option>
          </select>
        </label>
        <Small
          label="Stays on 100 cm², mL"
          value={leaves.mlPer100Cm2}
          onChange={(mlPer100Cm2) => set({ mlPer100Cm2 })}
        />
        <Small
          label="Where that is from"
          value={leaves.source}
          like="own weighing"
          onChange={(source) => set({ source })}
        />
      </fieldset>
      <p className="soft small">
        To weigh it: a cut shoot dry, and again dripping wet; 1 g more is 1 mL. Divide by its leaf area, both sides.
      </p>
      <Found found={found} onFound={onFound} />
    </details>
  );
}

type SmallProps = { label: string; value: string; like?: string; onChange: (value: string) => void };

function Small({ label, value, like, onChange }: SmallProps) {
  return (
    <label>
      {label}
      <input
        value={value}
        placeholder={like}
        onChange={({ target }) => onChange(target.value)}
        // Enter here means the trial and not yet the bench.
        onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}
        autoComplete="off"
      />
    </label>
  );
}

type FoundProps = { found: PerPlant | string | null; onFound: (ml: number) => void };

function Found({ found, onFound }: FoundProps) {
  if (found === null) return null;
  if (typeof found === 'string') return <p aria-live="polite">{found}</p>;
  const { mlPerPlant, spread, rests } = found;
  return (
    <div className={styles.found} aria-live="polite">
      <p>
        <b>{showNumber(mlPerPlant)} mL a plant</b>
        {spread && `, from ${showNumber(spread.least)} to ${showNumber(spread.most)} mL`}: {rests}.
      </p>
      <button type="button" onClick={() => onFound(mlPerPlant)}>
        Use {showNumber(mlPerPlant)} mL
      </button>
    </div>
  );
}
