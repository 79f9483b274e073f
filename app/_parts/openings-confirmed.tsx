import type { OpeningSeen } from '@/lib/views/openings-confirmed';
import styles from './openings-confirmed.module.css';

/** The benches that somebody let open earlier: who, when and why, and both ends. Nothing where there are none. */
export function OpeningsConfirmed({ openings }: { openings: OpeningSeen[] }) {
  if (openings.length === 0) return null;
  return (
    <section aria-labelledby="openings" className={styles.openings}>
      <h2 id="openings">Opened earlier by hand</h2>
      <ul>
        {openings.map(({ key, bench, was, is, who, when, why }) => (
          <li key={key}>
            <b>{bench}</b>: {is}. Before, it was {was}. <span className="soft">{`${who}, ${when}: ${why}`}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}
