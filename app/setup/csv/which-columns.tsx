import styles from './csv.module.css';
import type { Preview, Said } from './send-list';

type WhichColumnsProps = { preview: Preview; said: Said; onSaid: (said: Said) => void };

/** What each column of the file was taken for, to be chosen otherwise by hand. */
export function WhichColumns({ preview: { columns, choices }, said, onSaid }: WhichColumnsProps) {
  const fields = said.columns ?? columns.map(({ field }) => field);
  const left = fields.filter((field) => field === null).length;
  return (
    <details className={styles.whichColumns} open={left > 0}>
      <summary>Which column became what{left > 0 && <span className="soft">: {left} left out</span>}</summary>
      <ul className={styles.matched}>
        {columns.map(({ header, example }, place) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a file may have two columns of one name.
          <li key={place}>
            <label htmlFor={`column-${place}`}>
              {header || `column ${place + 1}`}
              {example !== '' && <small className="soft">{example}</small>}
            </label>
            <select
              id={`column-${place}`}
              value={fields[place] ?? ''}
              onChange={({ target: { value } }) => {
                onSaid({ ...said, columns: fields.map((field, each) => (each === place ? value || null : field)) });
              }}
            >
              <option value="">(leave out)</option>
              {choices.map(({ field, title, isNeeded }) => (
                <option key={field} value={field}>
                  {title}
                  {isNeeded ? ' (needed)' : ''}
                </option>
              ))}
            </select>
          </li>
        ))}
      </ul>
    </details>
  );
}
