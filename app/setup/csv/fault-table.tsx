import { ColumnHeads } from '../../_parts/column-heads';
import styles from './csv.module.css';
import type { Preview } from './send-list';

type FaultTableProps = { caption: string; says: string; notes: Preview['faults'] };

/** Everything that is to be said about single places of a file: line, column, and what to write instead. */
export function FaultTable({ caption, says, notes }: FaultTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls by itself must be reachable with the keyboard.
    <section className={styles.notes} tabIndex={0} aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        <ColumnHeads of={[{ number: 'Line' }, 'Column', says]} />
        <tbody>
          {notes.map(({ line, column, message }, place) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: one cell can have two faults that say the same.
            <tr key={place}>
              <td className="number">{line ?? ''}</td>
              <td>{column ?? ''}</td>
              <td>{message}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
