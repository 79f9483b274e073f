import { FieldsChanged } from '../fields-changed';
import styles from './csv.module.css';
import { grouped } from './how-far';
import type { Preview } from './send-list';

/** More than anybody reads before confirming. The rest is counted. */
const MOST_SHOWN = 100;

/** What would be new, what would change from what to what, and how much stays as it is. */
export function WouldChange({ preview: { added, changed, unchanged } }: { preview: Preview }) {
  return (
    <div className={styles.would}>
      {changed.length > 0 && (
        <details open={changed.length <= 12}>
          <summary>{grouped(changed.length)} changed</summary>
          <ul>
            {changed.slice(0, MOST_SHOWN).map(({ id, name, line, fields }) => (
              <li key={id}>
                <b>{name}</b> <small className="soft">line {line}</small>
                <FieldsChanged fields={fields} />
              </li>
            ))}
          </ul>
          <More left={changed.length - MOST_SHOWN} />
        </details>
      )}
      {added.length > 0 && (
        <details open={added.length <= 12}>
          <summary>{grouped(added.length)} new</summary>
          <ul>
            {added.slice(0, MOST_SHOWN).map(({ id, name, line }) => (
              <li key={id}>
                {name}{' '}
                <small className="soft">
                  line {line}, id {id}
                </small>
              </li>
            ))}
          </ul>
          <More left={added.length - MOST_SHOWN} />
        </details>
      )}
      {unchanged > 0 && <p className="soft">{grouped(unchanged)} as they are already.</p>}
    </div>
  );
}

function More({ left }: { left: number }) {
  return left > 0 ? <p className="soft">and {grouped(left)} more.</p> : null;
}
