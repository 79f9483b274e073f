import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type PlanScreen, planScreen, weeksAsked } from '@/lib/views/purchase-plan';
import { showDay } from '@/shared/time/show-day';
import { AssumedList } from '../../_parts/assumed-list';
import { EmptyPlace } from '../../_parts/empty-place';
import { Figure } from '../../_parts/figure';
import { FirstVisit } from '../../_parts/first-visit';
import { one, type Search } from '../../_parts/search';
import { ToEnterList } from '../../_parts/to-enter';
import { BuyLinks } from '../buy-links';
import { CostLadder, Habits } from './cost-ladder';
import styles from './plan.module.css';
import { PlannedOrders } from './planned-orders';
import { SearchForm } from './search-form';

export const metadata: Metadata = { title: 'Purchase plan' };

async function PlanPage({ searchParams }: { searchParams: Promise<Search> }) {
  const screen = await planScreen(clock, weeksAsked(one((await searchParams).weeks)));
  if (!screen) return <FirstVisit />;
  const { orders, ways } = screen;
  return (
    <>
      <h1>Purchase plan</h1>
      <BuyLinks here="/buy/plan" />
      <SearchForm screen={screen} />
      <Proof screen={screen} />
      <Late screen={screen} />
      <div className={styles.columns}>
        <div className={styles.beside}>
          <CostLadder screen={screen} />
          <Habits screen={screen} />
          <NotKnown screen={screen} />
        </div>
        <section aria-labelledby="orders">
          <h2 id="orders">What to order</h2>
          {orders.length === 0 ? (
            <EmptyPlace>Nothing has to be bought: the shelf and what is on order last through these weeks.</EmptyPlace>
          ) : (
            <PlannedOrders orders={orders} ways={ways} />
          )}
        </section>
      </div>
    </>
  );
}

/** How good the plan is, in money: what it comes to, what none can be below, and so what could be saved at most. */
function Proof({ screen: { isSearched, proof, cost, unknown, ways } }: { screen: PlanScreen }) {
  const { isProven, bound, saved } = proof;
  return (
    <div className={styles.proof}>
      {unknown.names.length > 0 && (
        <p className="grave">
          <b>Not proven:</b> how much is needed of {unknown.names.join(', ')} is not known.{' '}
          <a href="#unknown">Enter it</a>. The rest of this holds for what is known.
        </p>
      )}
      {!isSearched && !isProven && (
        <p>
          Here each product is planned by itself. What is saved by sending orders together is looked for when you ask.
        </p>
      )}
      {isProven ? (
        <p>
          <b>Proven: no plan is cheaper</b> than this one at <Figure of={bound} ways={ways} />.
        </p>
      ) : (
        <p>
          This plan comes to <Figure of={cost.total} ways={ways} />. No plan can come to less than{' '}
          <Figure of={bound} ways={ways} />, so{' '}
          <b>
            at most <Figure of={saved} ways={ways} /> could still be saved
          </b>
          .
        </p>
      )}
    </div>
  );
}

/** What no order comes in time for, and what nobody offers. */
function Late({ screen: { late, unoffered, ways } }: { screen: PlanScreen }) {
  if (late.length === 0 && unoffered.length === 0) return null;
  return (
    <section aria-labelledby="late">
      <h2 id="late">Late</h2>
      {late.length > 0 && (
        <p className="grave">No order placed today comes in time for these. They are ordered today all the same.</p>
      )}
      <ul className={styles.list}>
        {late.map(({ product, on, amount }) => (
          <li key={amount.at}>
            <b>{product}</b>: <Figure of={amount} ways={ways} /> for {showDay(on, ways.today)}
          </li>
        ))}
        {unoffered.map(({ product, on, amount }) => (
          <li key={amount.at}>
            <b>{product}</b>: <Figure of={amount} ways={ways} /> in all, from {showDay(on, ways.today)} on.{' '}
            <span className="grave">Nobody offers it, so it is in no order.</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What nobody entered: what cannot be planned for that, and what is taken for granted instead. */
function NotKnown({ screen: { unknown, unsold, assumed } }: { screen: PlanScreen }) {
  if (unknown.names.length === 0 && unsold.length === 0 && assumed.length === 0) return null;
  return (
    <section aria-labelledby="unknown">
      <h2 id="unknown">Not known</h2>
      {unknown.names.length > 0 && (
        <p className="grave">
          <b>Cannot be planned:</b> {unknown.names.join(', ')}. How much is needed is not known; only what is known of
          it is in this plan.
        </p>
      )}
      <ToEnterList of={[...unknown.toEnter, ...unsold]} />
      <AssumedList of={assumed} />
    </section>
  );
}

export default doorPage('grow', PlanPage);
