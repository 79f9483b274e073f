import type { ShelfBottle } from '@/lib/views/shelf-bottles';
import type { Day } from '@/shared/time/day';
import { showDayShort } from '@/shared/time/show-day';
import { ColumnHeads } from '../../_parts/column-heads';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import { daysLeftText } from '../days-left-text';
import styles from './product.module.css';

type ContainerTableProps = { bottles: ShelfBottle[]; today: Day; ways: Ways };

/** Each container in the order in which it dies. */
export function ContainerTable({ bottles, today, ways }: ContainerTableProps) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="Containers as a table">
      <table className={styles.table}>
        <ColumnHeads of={['Container', { number: 'Left' }, 'Last usable day', { number: 'Worth' }]} />
        <tbody>
          {bottles.map((bottle) => (
            <tr key={bottle.key}>
              <th scope="row">
                <a href={bottle.href}>
                  {bottle.pack}, lot {bottle.lot}
                </a>
                <span className="soft">{historyOf(bottle, today)}</span>
              </th>
              <td className="number">
                <Figure of={bottle.remaining} ways={ways} />
              </td>
              <td>
                <Figure of={bottle.lastUsableDay} ways={ways} />
                {bottle.daysLeft !== null && (
                  <span className={bottle.daysLeft < 0 ? 'grave' : 'soft'}>, {daysLeftText(bottle.daysLeft)}</span>
                )}
              </td>
              <td className="number">
                <Figure of={bottle.value} ways={ways} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function historyOf({ coming, receivedOn, openedOn }: ShelfBottle, today: Day): string {
  if (coming) return `, arrives ${showDayShort(receivedOn, today)}`;
  const opened = openedOn ? `opened ${showDayShort(openedOn, today)}` : 'not opened';
  return `, received ${showDayShort(receivedOn, today)}, ${opened}`;
}
