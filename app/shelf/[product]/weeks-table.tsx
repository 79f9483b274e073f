import type { Fig } from '@/lib/views/figures';
import { type ProductScreen, WEEK_COLUMNS } from '@/lib/views/product';
import { showDayShort } from '@/shared/time/show-day';
import { ColumnHeads } from '../../_parts/column-heads';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import styles from './product.module.css';

/** The weeks of the plan as figures. Opening + received − used − wasted = closing. */
export function WeeksTable({ weeks, ways }: { weeks: ProductScreen['weeks']; ways: Ways }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="Stock by week as a table">
      <table className={styles.table}>
        <ColumnHeads of={['Seven days from', ...WEEK_COLUMNS.map((number) => ({ number }))]} />
        <tbody>
          {weeks.map(({ week, cells }) => (
            <tr key={week}>
              <th scope="row">{showDayShort(week, ways.today)}</th>
              {cells.map((cell) => (
                <td key={cell.at} className={`number ${toneOf(cell)}`}>
                  <Figure of={cell} ways={ways} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Nothing is written softly, so that what happens stands out; what is short or wasted, gravely. */
function toneOf({ at, value }: Fig): string {
  if (value.kind === 'stock' && value.amount === 0) return 'soft';
  return /\/(short|wasted)$/.test(at) ? 'grave' : '';
}
