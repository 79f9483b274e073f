import type { AcceptedSeen } from '@/lib/views/records-accepted';
import styles from './openings-confirmed.module.css';

/** The records that did not fit their chain and that somebody accepted as they stood: who, when and why. */
export function RecordsAccepted({ accepted }: { accepted: AcceptedSeen[] }) {
  if (accepted.length === 0) return null;
  return (
    <section aria-labelledby="accepted" className={styles.openings}>
      <h2 id="accepted">Records that were changed outside of this program, and accepted</h2>
      <ul>
        {accepted.map(({ key, who, when, why, records }) => (
          <li key={key}>
            {records.join(' ')} <span className="soft">{`Accepted by ${who}, ${when}: ${why}`}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
