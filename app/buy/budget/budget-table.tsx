import type { BudgetRow, BudgetScreen } from '@/lib/views/budget-seen';
import type { Fig } from '@/lib/views/figures';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import styles from './budget.module.css';

const GROUPS = [
  {
    name: 'Spent',
    columns: [
      ['actual-product', 'product'],
      ['actual-waste', 'wasted'],
      ['actual-labour', 'work'],
    ],
  },
  {
    name: 'Was planned',
    columns: [
      ['foreseen-product', 'product'],
      ['foreseen-labour', 'work'],
    ],
  },
  {
    name: 'Planned ahead',
    columns: [
      ['planned-product', 'product'],
      ['planned-waste', 'wasted'],
      ['planned-labour', 'work'],
    ],
  },
] as const;

const COLUMNS = GROUPS.flatMap(({ columns }) => [...columns]);

/** The budget as a table: what was spent, what was planned for it, and what is planned, in product, waste and work. */
export function BudgetTable({ screen: { rows, sums, unknownInAll, ways, by } }: { screen: BudgetScreen }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="The budget as a table">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col" rowSpan={2}>
              {by}
            </th>
            {GROUPS.map(({ name, columns }) => (
              <th key={name} scope="colgroup" colSpan={columns.length}>
                {name}
              </th>
            ))}
            <th scope="col" rowSpan={2} className="number">
              Not known
            </th>
          </tr>
          <tr>
            {COLUMNS.map(([column, name]) => (
              <th key={column} scope="col" className="number">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ row, name, cells, unknown }) => (
            <Row key={row} name={name} cells={cells} unknown={unknown} ways={ways} />
          ))}
        </tbody>
        <tfoot>
          <Row name="In all" cells={sums} unknown={unknownInAll} ways={ways} />
        </tfoot>
      </table>
    </section>
  );
}

type RowProps = Pick<BudgetRow, 'name' | 'cells' | 'unknown'> & { ways: Ways };

function Row({ name, cells, unknown, ways }: RowProps) {
  return (
    <tr>
      <th scope="row">{name}</th>
      {COLUMNS.map(([column]) => (
        <td key={column} className="number">
          <Cell figure={cells[column]} ways={ways} />
        </td>
      ))}
      <td className="number">{unknown && <Figure of={unknown} ways={ways} />}</td>
    </tr>
  );
}

const Cell = ({ figure, ways }: { figure: Fig | null; ways: Ways }) =>
  figure === null ? <span className="soft">–</span> : <Figure of={figure} ways={ways} />;
