import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { type PlanScreen, planScreen, weeksAsked } from '@/lib/views/purchase-plan';
import { showDay } from '@/shared/time/show-day';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import { one, type Search } from '../../_parts/search';
import { BuyLinks } from '../buy-links';
import { CostLadder, Habits } from './cost-ladder';
import styles from './plan.module.css';
import { PlannedOrders } from './planned-orders';
import { SearchForm } from './search-form';

export const metadata: Metadata = { title: 'Purchase plan' };

export default async function PlanPage({ searchParams }: { searchParams: Promise<Search> }) {
  const screen = await planScreen(clock, weeksAsked(one((await searchParams).weeks)));
  if (!screen) return <FirstVisit />;
  const { orders, late, unknowns, ways } = screen;
  return (
    <>
      <h1>Purchase plan</h1>
      <BuyLinks here="/buy/plan" />
      <SearchForm screen={screen} />
      <p className={styles.proof}>{proofWords(screen)}</p>
      {late.length > 0 && (
        <section aria-labelledby="late">
          <h2 id="late">Late</h2>
          <p className="grave">No order placed today comes in time for these. They are ordered today all the same.</p>
          <ul className={styles.list}>
            {late.map(({ product, on, amount }) => (
              <li key={`${product} ${on}`}>
                <b>{product}</b>: {amount} for {showDay(on, ways.today)}
              </li>
            ))}
          </ul>
        </section>
      )}
      <div className={styles.columns}>
        <section aria-labelledby="orders">
          <h2 id="orders">What to order</h2>
          {orders.length === 0 ? (
            <EmptyPlace>Nothing has to be bought: the shelf and what is on order last through these weeks.</EmptyPlace>
          ) : (
            <PlannedOrders orders={orders} ways={ways} />
          )}
        </section>
        <div>
          <CostLadder screen={screen} />
          <Habits screen={screen} />
          {unknowns.length > 0 && <Unknowns unknowns={unknowns} />}
        </div>
      </div>
    </>
  );
}

function proofWords({ isSearched, proof }: PlanScreen): string {
  if (isSearched) return proof;
  return `Each product is planned by itself here. What orders save that are sent together is looked for when you ask. ${proof}`;
}

function Unknowns({ unknowns }: Pick<PlanScreen, 'unknowns'>) {
  return (
    <section aria-labelledby="unknown">
      <h2 id="unknown">Not known</h2>
      <ul className={styles.list}>
        {unknowns.map(({ words, href }) => (
          <li key={words}>
            {words} <a href={href}>Enter it</a>
          </li>
        ))}
      </ul>
    </section>
  );
}
