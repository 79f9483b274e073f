'use client';

import { useEffect, useState } from 'react';
import { readingName } from '@/shared/forms/measuring';
import { rowsIn } from '@/shared/forms/rows';
import { MOST_SPREAD, portionsOf, type Repeated, repeatedReading, spreadText } from '@/shared/measure/repeated-reading';
import { showNumber } from '@/shared/measure/show';
import { FormField } from '../../_parts/form-field';
import type { ThingForm } from '../../_parts/use-thing-form';
import styles from './measuring.module.css';

type Draft = Record<string, string>;

/** What is measured: "spoon" in "g" on a "scale". */
export type Measured = { piece: string; unit: string; each: string; total: string; piecesHint: string };

/** The fields of readings with nothing in them yet. */
export const blankReadings = (pieces: string): Draft => ({
  pieces,
  way: 'each',
  ...Object.fromEntries([0, 1, 2, 3, 4].map((row) => [readingName(row), ''])),
});

/** What has been read so far; null while there is nothing, or something that cannot be read. */
export function resultOf(draft: Readonly<Draft>): Repeated | null {
  const pieces = Number(draft.pieces);
  if (!Number.isInteger(pieces) || pieces < 1) return null;
  const texts = rowsIn(Object.keys(draft), 'readings').map((row) => draft[readingName(row)] ?? '');
  const portions = portionsOf(texts, pieces, draft.way === 'total' ? 'total' : 'each');
  return portions.ok && portions.value.length > 0 ? repeatedReading(portions.value) : null;
}

/** What the scale or the syringe showed, reading by reading. */
export function Readings({ form, measured }: { form: ThingForm<Draft>; measured: Measured }) {
  const { draft, change, state } = form;
  const { piece, unit, each, total, piecesHint } = measured;
  const rows = rowsIn(Object.keys(draft), 'readings');
  const [added, setAdded] = useState<string | null>(null);
  useEffect(() => {
    if (added) document.getElementById(added)?.focus();
  }, [added]);
  const set = (name: string, value: string) => change((before) => ({ ...before, [name]: value }));
  const add = () => {
    const name = readingName((rows.at(-1) ?? 0) + 1);
    set(name, '');
    setAdded(name);
  };
  return (
    <>
      <div className={styles.pair}>
        <FormField state={state} name="pieces" label={`${piece}s in each reading`} hint={piecesHint}>
          {(wiring) => (
            <input
              {...wiring}
              value={draft.pieces}
              onChange={(event) => set('pieces', event.target.value)}
              inputMode="numeric"
              autoComplete="off"
            />
          )}
        </FormField>
        <FormField state={state} name="way" label="What each reading shows">
          {(wiring) => (
            <select {...wiring} value={draft.way} onChange={(event) => set('way', event.target.value)}>
              <option value="each">{each}</option>
              <option value="total">{total}</option>
            </select>
          )}
        </FormField>
      </div>
      <div className={styles.readings}>
        {rows.map((row, place) => (
          <FormField key={row} state={state} name={readingName(row)} label={`Reading ${place + 1}, ${unit}`}>
            {(wiring) => (
              <input
                {...wiring}
                value={draft[readingName(row)]}
                onChange={(event) => set(readingName(row), event.target.value)}
                inputMode="decimal"
                autoComplete="off"
              />
            )}
          </FormField>
        ))}
        <button type="button" className={styles.more} onClick={add}>
          One more reading
        </button>
      </div>
    </>
  );
}

/** The result while it is typed: one piece, how far they are from each other, and whether that is good enough. */
export function Result({ result, measured: { piece, unit } }: { result: Repeated | null; measured: Measured }) {
  const name = piece.toLowerCase();
  return (
    <output className={styles.result} aria-live="polite">
      {result === null ? (
        <span className="soft">One {name} is not known yet.</span>
      ) : (
        <>
          <span className={styles.numeral}>
            {showNumber(result.mean)} <small>{unit}</small>
          </span>
          <span className="soft">
            in one {name}: all that was read ÷ {result.pieces} {name}s
          </span>
          <SpreadLine result={result} name={name} unit={unit} />
        </>
      )}
    </output>
  );
}

function SpreadLine({ result, name, unit }: { result: Repeated; name: string; unit: string }) {
  const { spread, deviation, least, most } = result;
  if (spread === null || deviation === null) {
    return <span className="soft">One reading says nothing of the spread. Take a second one.</span>;
  }
  return (
    <>
      <span className="soft">
        {showNumber(least)} to {showNumber(most)} {unit}; one differs from another by {spreadText(spread)} (standard
        deviation {showNumber(deviation)} {unit})
      </span>
      {spread > MOST_SPREAD && (
        <b className="grave">
          They differ by more than {spreadText(MOST_SPREAD)}. Measure more {name}s, each the same way.
        </b>
      )}
    </>
  );
}
