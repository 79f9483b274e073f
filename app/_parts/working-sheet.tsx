import type { Step, Working } from '@/lib/engine/working/shown';
import { Figure } from './figure';
import { shownText, type Ways } from './shown-text';
import { ToEnterList } from './to-enter';
import styles from './working-sheet.module.css';

type WorkingSheetProps = { working: Working; ways: Ways; headingId: string };

/** How one figure was reached: the rule in words, then every input with its unit and where it came from. */
export function WorkingSheet({ working, ways, headingId }: WorkingSheetProps) {
  const { title, value, rule, steps, toEnter = [] } = working;
  return (
    <article className={styles.sheet}>
      <h1 id={headingId} className={styles.title} tabIndex={-1}>
        {title}
      </h1>
      <p className={styles.value}>{shownText(value, ways)}</p>
      {value.kind === 'unknown' && <p className={styles.because}>{value.because}</p>}
      {toEnter.length > 0 && (
        <div className={styles.because}>
          <p>Not all of it is known.</p>
          <ToEnterList of={toEnter} />
        </div>
      )}
      <p className={styles.rule}>{rule}</p>
      {steps.length > 0 && (
        <dl className={styles.steps}>
          {steps.map((step, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two steps may say the same; their order never changes.
            <StepLine key={place} step={step} ways={ways} />
          ))}
        </dl>
      )}
    </article>
  );
}

function StepLine({ step, ways }: { step: Step; ways: Ways }) {
  const { label, value, from, figure } = step;
  return (
    <div className={styles.step}>
      <dt>
        {label}
        <span className={styles.from}>{from}</span>
      </dt>
      <dd className={value.kind === 'unknown' ? styles.unknown : undefined}>
        {figure ? <Figure of={{ at: figure, value }} ways={ways} /> : shownText(value, ways)}
        {value.kind === 'unknown' && <span className={styles.from}>{value.because}</span>}
      </dd>
    </div>
  );
}
