'use client';

import type { PlantsTyped } from '@/shared/forms/bench';
import type { FormState } from '@/shared/forms/form-state';
import { FormField } from '../../_parts/form-field';
import parts from '../../_parts/thing-form.module.css';
import styles from './bench-form.module.css';
import { PerPlantFinder } from './per-plant-finder';

type PlantsFieldsProps = {
  state: FormState;
  plants: PlantsTyped;
  number: number;
  onChange: (fields: Partial<PlantsTyped>) => void;
  onTakeOut: () => void;
};

const FIELDS = [
  { column: 'name', label: 'Plants', mode: 'text' },
  { column: 'pot', label: 'Pot', mode: 'text' },
  { column: 'count', label: 'How many', mode: 'numeric' },
  { column: 'mlPerPlant', label: 'mL per plant', mode: 'decimal' },
] as const;

/** One group of plants on a bench, and how to find out what one of them takes. */
export function PlantsFields({ state, plants, number, onChange, onTakeOut }: PlantsFieldsProps) {
  const called = plants.name || `group ${number + 1}`;
  return (
    <li className={parts.row} aria-label={`Plants ${number + 1}${plants.name ? `, ${plants.name}` : ''}`}>
      <div className={styles.fields}>
        {FIELDS.map(({ column, label, mode }) => (
          <FormField key={column} state={state} name={`plants[${number}].${column}`} label={label}>
            {(wiring) => (
              <input
                {...wiring}
                value={plants[column]}
                onChange={({ target }) => onChange({ [column]: target.value })}
                inputMode={mode}
                autoComplete="off"
              />
            )}
          </FormField>
        ))}
      </div>
      <div className={`${styles.under} ${parts.scripted}`}>
        <PerPlantFinder called={called} onFound={(ml) => onChange({ mlPerPlant: String(ml) })} />
        <button type="button" className={styles.out} onClick={onTakeOut} aria-label={`Take out ${called}`}>
          Take out
        </button>
      </div>
    </li>
  );
}
