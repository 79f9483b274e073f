'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef } from 'react';
import type { LabelsScreen } from '@/lib/views/labels';
import { PrintButton } from '../../_parts/print-button';
import styles from './labels.module.css';

/** Long enough to tick two bottles, short enough to seem at once. */
const CHOOSING_MS = 250;

/**
 * Which bottles, on what sheet, from which label on. A plain form: its answer is the address of the sheets. Where
 * scripts run, they are laid out while one chooses, so that what is printed is what is chosen.
 */
export function LabelsForm({ screen: { sheet, skip, onASheet, choices } }: { screen: LabelsScreen }) {
  const router = useRouter();
  const waiting = useRef<ReturnType<typeof setTimeout>>(undefined);
  useEffect(() => () => clearTimeout(waiting.current), []);
  const layOut = (form: HTMLFormElement) => {
    clearTimeout(waiting.current);
    waiting.current = setTimeout(() => router.replace(addressOf(form, choices.length), { scroll: false }), CHOOSING_MS);
  };
  const kept = `sheet=${sheet}&skip=${skip}`;
  return (
    <form
      className={styles.form}
      action="/shelf/labels"
      aria-label="What to print"
      onInput={({ currentTarget }) => layOut(currentTarget)}
    >
      <input type="hidden" name="chosen" value="yes" />
      <div className={styles.settings}>
        <div>
          <label htmlFor="sheet">Sheet</label>
          <select id="sheet" name="sheet" defaultValue={sheet}>
            <option value="letter">Letter, 24 labels of 66 × 32 mm</option>
            <option value="a4">A4, 24 labels of 64 × 34 mm</option>
          </select>
        </div>
        <div>
          <label htmlFor="skip">Labels already used on the first sheet</label>
          <input
            id="skip"
            name="skip"
            type="number"
            inputMode="numeric"
            min={0}
            max={onASheet - 1}
            defaultValue={skip}
          />
        </div>
      </div>
      <fieldset className={styles.which}>
        <legend>
          Bottles <a href={`/shelf/labels?${kept}`}>all</a> <a href={`/shelf/labels?${kept}&chosen=none`}>none</a>
        </legend>
        <ul className={styles.bottles}>
          {choices.map(({ label, chosen }) => (
            <li key={label.key}>
              <label>
                <input type="checkbox" name="bottle" value={label.key} defaultChecked={chosen} />
                <span>
                  {label.product}{' '}
                  <span className="soft">
                    {label.pack}, {label.lot} no. {label.number}
                  </span>
                </span>
              </label>
            </li>
          ))}
        </ul>
      </fieldset>
      <p className={styles.buttons}>
        <button type="submit" className={styles.layOut}>
          Lay them out
        </button>
        <PrintButton />
      </p>
    </form>
  );
}

/** The address of what a form says. All bottles need no names in it, and a large shelf would have too many. */
function addressOf(form: HTMLFormElement, all: number): string {
  const said = [...new FormData(form)].map(([name, value]): [string, string] => [name, String(value)]);
  const bottles = said.filter(([name]) => name === 'bottle');
  const kept = bottles.length === all ? said.filter(([name]) => name !== 'bottle' && name !== 'chosen') : said;
  return `/shelf/labels?${new URLSearchParams(kept)}`;
}
