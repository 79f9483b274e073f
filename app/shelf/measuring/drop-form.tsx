'use client';

import type { DropScreen } from '@/lib/views/measuring';
import { readDose } from '@/shared/measure/dose';
import { showNumber } from '@/shared/measure/show';
import { exact, multiply, toNumber } from '@/shared/quantity/exact';
import { ThingForm } from '../../_parts/thing-form';
import { useThingForm } from '../../_parts/use-thing-form';
import { keepDropAction } from '../measuring-actions';
import styles from './measuring.module.css';
import { blankReadings, type Measured, Readings, Result, resultOf } from './readings';

const DROP: Measured = {
  piece: 'Drop',
  unit: 'mL',
  each: 'that portion alone: emptied before it',
  total: 'all so far: never emptied',
  piecesHint: 'Twenty or more, counted.',
};

/** Drops counted into a syringe or onto a scale, to what one of them is, and what doses in drops become by it. */
export function DropForm({ thing, dropMl, doses }: DropScreen) {
  const form = useThingForm<Record<string, string>>({
    what: 'drop',
    thing,
    action: keepDropAction,
    initial: blankReadings('20'),
    inFields: ({ commandId, shop, id, standing, ...read }) => read,
  });
  const result = resultOf(form.draft);
  return (
    <>
      <ThingForm form={form} save="Keep this drop" back="/shelf">
        <Readings form={form} measured={DROP} />
        <Result result={result} measured={DROP} />
      </ThingForm>
      <section aria-labelledby="doses">
        <h2 id="doses">What is dosed in drops</h2>
        {doses.length === 0 ? (
          <p className="soft">No recipe and no label counts in drops. Nothing changes until one does.</p>
        ) : (
          <ul className={styles.changes}>
            {doses.map(({ where, dose }, number) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a recipe may hold the same dose twice.
              <li key={`${where} ${dose} ${number}`}>
                <b>{where}</b>
                <span>
                  {dose} is {inMillilitres(dose, dropMl)}
                  {result && `, and would be ${inMillilitres(dose, result.mean)}`}
                </span>
              </li>
            ))}
          </ul>
        )}
      </section>
    </>
  );
}

/** A dose in drops, written out with what a drop is. */
function inMillilitres(text: string, dropMl: number): string {
  const dose = readDose(text, 'liquid', multiply(exact(dropMl), exact(1000n)));
  if (!dose.ok) return 'not readable';
  if (dose.value.kind === 'volume') return `${showNumber(toNumber(dose.value.mlPerLitre))} mL in a litre of spray`;
  return dose.value.kind === 'perArea' ? `${showNumber(toNumber(dose.value.perSquareMetre))} mL on a m²` : text;
}
