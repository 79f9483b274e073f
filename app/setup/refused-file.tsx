import field from '../_parts/form-field.module.css';
import type { Refused } from './send-shop-file';
import styles from './setup.module.css';

/** Why a file cannot come in: every fault, where it is and what to write instead. */
export function RefusedFile({ refused: { message, faults } }: { refused: Refused }) {
  return (
    <div role="alert" className={field.said}>
      <p>
        <b>{message}</b>
      </p>
      {faults.length > 0 && (
        <ul className={styles.faults} aria-label="What to put right">
          {faults.map(({ path, message: what }, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one place of a file can have two faults that say the same.
            <li key={place}>
              {path && <code>{path}</code>} {what}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
