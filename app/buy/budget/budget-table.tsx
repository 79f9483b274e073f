import type { BudgetRow, BudgetScreen } from '@/lib/views/budget';
import type { Fig } from '@/lib/views/figures';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';

const COLUMNS = [
  ['actual-product', 'product'],
  ['actual-waste', 'wasted'],
  ['actual-labour', 'work'],
  ['planned-product', 'product'],
  ['planned-waste', 'wasted'],
  ['planned-labour', 'work'],
] as const;

/** The budget as a table: what was spent and what is planned, apart in product, waste and work. */
export function BudgetTable({
  rows,
  sums,
  ways,
  what,
}: Pick<BudgetScreen, 'rows' | 'sums' | 'ways'> & { what: string }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="The budget as a table">
      <table>
        <thead>
          <tr>
            <th scope="col" rowSpan={2}>
              {what}
            </th>
            <th scope="colgroup" colSpan={3}>
              Spent
            </th>
            <th scope="colgroup" colSpan={3}>
              Planned
            </th>
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
            <tr key={row}>
              <th scope="row">{name}</th>
              <Cells cells={cells} ways={ways} />
              <td className={unknown > 0 ? 'number grave' : 'number'}>{unknown > 0 ? unknown : ''}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">In all</th>
            <Cells cells={sums} ways={ways} />
            <td />
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

function Cells({ cells, ways }: { cells: BudgetRow['cells']; ways: Ways }) {
  return COLUMNS.map(([column]) => (
    <td key={column} className="number">
      <Cell figure={cells[column]} ways={ways} />
    </td>
  ));
}

const Cell = ({ figure, ways }: { figure: Fig | null; ways: Ways }) =>
  figure === null ? <span className="soft">–</span> : <Figure of={figure} ways={ways} />;
