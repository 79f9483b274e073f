import { ConfirmEarlier } from '../_parts/earlier-opening';
import field from '../_parts/form-field.module.css';
import type { Refused, Sure } from './send-in-steps';
import styles from './setup.module.css';

type RefusedProps = { refused: Refused; isBusy?: boolean; onSure?: (sure: Sure) => void };

/** Why a file cannot come in: every fault, where it is and what to write instead; or which benches it would open earlier. */
export function RefusedFile({ refused: { message, faults, confirm, code }, isBusy = false, onSure }: RefusedProps) {
  const isAsked = confirm !== undefined && onSure !== undefined;
  const about = code === 'many-bottles' ? 'bottles' : undefined;
  return (
    <div role="alert" className={field.said}>
      <p>
        <b>{message}</b>
      </p>
      {isAsked && (
        <ConfirmEarlier
          key={confirm}
          asked={{ token: confirm, openings: faults.map((fault) => fault.message), reason: '', about }}
          isBusy={isBusy}
          send="Bring it in all the same"
          onConfirm={(reason) => onSure({ token: confirm, reason })}
        />
      )}
      {!isAsked && faults.length > 0 && (
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
