import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { budgetAsked } from '@/lib/threads/read-answers';
import type { BudgetScreen } from '@/lib/views/budget-seen';
import { explain } from '@/shared/outcome';
import { showDayOnPaper } from '@/shared/time/show-day';
import { ColumnHeads } from '../../_parts/column-heads';
import { EmptyPlace } from '../../_parts/empty-place';
import { Figure } from '../../_parts/figure';
import { FirstVisit } from '../../_parts/first-visit';
import type { Search } from '../../_parts/search';
import { ToEnterList } from '../../_parts/to-enter';
import { BuyLinks } from '../buy-links';
import styles from './budget.module.css';
import { BudgetLater } from './budget-later';
import { BudgetLegend } from './budget-legend';
import { BudgetTable } from './budget-table';

export const metadata: Metadata = { title: 'Budget' };

const WAYS_TO_LOOK = [
  ['month', 'By month'],
  ['program', 'By program'],
  ['bench', 'By bench'],
  ['product', 'By product'],
] as const;

async function BudgetPage({ searchParams }: { searchParams: Promise<Search> }) {
  const asked = await budgetAsked(clock, await searchParams);
  if (!asked) return <FirstVisit />;
  return (
    <>
      <h1>Budget</h1>
      <BuyLinks here="/buy/budget" />
      {asked.ok ? <Budget screen={asked.value} /> : <p className="grave">{explain(asked.refusal)}</p>}
    </>
  );
}

function Budget({ screen }: { screen: BudgetScreen }) {
  const { by, rows, ways, from, to, today } = screen;
  return (
    <>
      <p className="soft">
        Spent from {showDayOnPaper(from)} to {showDayOnPaper(today)}; planned to {showDayOnPaper(to)}. Freight is in
        none of it; it stands with each order.
      </p>
      <nav className={styles.looks} aria-label="Put together">
        {WAYS_TO_LOOK.map(([key, name]) => (
          <a key={key} href={`/buy/budget?by=${key}`} aria-current={key === by ? 'page' : undefined}>
            {name}
          </a>
        ))}
      </nav>
      {rows.length === 0 ? (
        <EmptyPlace step={{ href: '/setup/programs', text: 'Look at the programs' }}>
          What each month costs stands here once something is sprayed or planned.
        </EmptyPlace>
      ) : (
        <section aria-label="Cost">
          <BudgetLegend />
          <BudgetLater rows={rows} currency={ways.currency} byMonth={by === 'month'} />
          <details className={styles.same} open>
            <summary>The same numbers as a table</summary>
            <BudgetTable screen={screen} />
          </details>
        </section>
      )}
      <Unknown screen={screen} />
      <Plants screen={screen} />
    </>
  );
}

/** What is in no sum because nobody knows it, by name. */
function Unknown({ screen: { unknown, ways } }: { screen: BudgetScreen }) {
  if (unknown.length === 0) return null;
  return (
    <section aria-labelledby="unknown">
      <h2 id="unknown">Not known, and in no sum</h2>
      <ul className={styles.unknown}>
        {unknown.map(({ name, side, times, toEnter }) => (
          <li key={`${side} ${name}`}>
            {name}{' '}
            <span className="soft">
              · {side}, <Figure of={times} ways={ways} />
            </span>
            <ToEnterList of={toEnter} />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What one plant costs in the year ahead, for whoever prices it. */
function Plants({ screen: { plants, ways } }: { screen: BudgetScreen }) {
  if (plants.length === 0) return null;
  return (
    <section aria-labelledby="plants">
      <h2 id="plants">What one plant costs in the year ahead</h2>
      <p className="soft">
        Product and work of the 52 weeks ahead as they are planned, for pricing the plant. Freight and what dies in
        bottles are in neither.
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard. */}
      <section className="sideways" tabIndex={0} aria-label="What one plant costs as a table">
        <table>
          <ColumnHeads of={['Plants', 'Bench', { number: 'Product' }, { number: 'Work' }, { number: 'In all' }]} />
          <tbody>
            {plants.map(({ bench, group, ...costs }, place) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: two groups may have one name; their order never changes.
              <tr key={place}>
                <th scope="row">
                  {group.name}
                  {group.pot && `, ${group.pot}`}
                </th>
                <td>{bench}</td>
                {[costs.product, costs.labour, costs.all].map((cost) => (
                  <td key={cost.at} className="number">
                    <Figure of={cost} ways={ways} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

export default doorPage('grow', BudgetPage);
