import type { Label } from '@/lib/views/labels';
import { showDayOnPaper } from '@/shared/time/show-day';
import { Square } from '../../_parts/square';
import styles from './label-sheet.module.css';

/** One sheet of labels, in the size it is printed in. Labels that were used before stay empty. */
export function LabelSheet({ labels }: { labels: (Label | null)[] }) {
  return (
    <ul className={styles.sheet}>
      {labels.map((label, place) =>
        label ? (
          <PrintedLabel key={label.key} label={label} />
        ) : (
          // biome-ignore lint/suspicious/noArrayIndexKey: an empty label is nothing but its place.
          <li key={place} className={styles.used} aria-hidden="true" />
        ),
      )}
    </ul>
  );
}

function PrintedLabel({ label }: { label: Label }) {
  const { code, square, product, lot, number, pack, lastDay, receivedOn, signalWord } = label;
  return (
    <li className={styles.label}>
      <div className={styles.square}>
        <Square of={square} />
        <span className={styles.code}>{code}</span>
      </div>
      <div className={styles.words}>
        <b className={styles.product}>{product}</b>
        <span>
          {pack}, lot {lot} no. {number}
        </span>
        <b>{lastDay === null ? 'no last day known' : `use until ${showDayOnPaper(lastDay)}`}</b>
        <span>{openedWords(label)}</span>
        <span>received {showDayOnPaper(receivedOn)}</span>
        {signalWord && <span className={styles.signal}>{signalWord}</span>}
      </div>
    </li>
  );
}

/** For an unopened bottle, a line to write the day on that decides how long it keeps. */
function openedWords({ openedOn, openedDays }: Label): string {
  if (openedOn !== null) return `opened ${showDayOnPaper(openedOn)}`;
  return openedDays === null ? 'opened ________' : `opened ________ + ${openedDays} d`;
}
