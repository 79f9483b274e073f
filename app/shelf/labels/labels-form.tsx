import type { LabelsScreen } from '@/lib/views/labels';
import { LABELS_ON_A_SHEET } from '@/lib/views/labels';
import styles from './labels.module.css';
import { PrintButton } from './print-button';

/** Which bottles, on what sheet, from which label on. A plain form: its answer is the address of the sheet. */
export function LabelsForm({ screen: { sheet, skip, choices } }: { screen: LabelsScreen }) {
  return (
    <form className={styles.form} action="/shelf/labels" aria-label="What to print">
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
            max={LABELS_ON_A_SHEET - 1}
            defaultValue={skip}
          />
        </div>
      </div>
      <fieldset className={styles.which}>
        <legend>
          Bottles <a href="/shelf/labels">all</a> <a href="/shelf/labels?chosen=none">none</a>
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
        <button type="submit">Lay them out</button>
        <PrintButton />
      </p>
    </form>
  );
}
