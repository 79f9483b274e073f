'use client';

import { useKeptMixes } from '@/app/_parts/kept-mixes';
import type { MixedScreen } from '@/lib/views/mixed';
import { showMoney } from '@/shared/measure/show';
import styles from './mixed.module.css';

type CostByLineProps = Pick<MixedScreen, 'application' | 'lines' | 'cost'> & { currency: string };

/** What the mix cost as it was drawn, beside what the sheet had said; line by line on the device that it was mixed with. */
export function CostByLine({ application, lines, cost, currency }: CostByLineProps) {
  const kept = useKeptMixes()?.find(({ finished }) => finished?.application === application);
  const planned = (product: string) => kept?.plan.pours.find((pour) => pour.product === product)?.costMicros ?? null;
  const money = (micros: number | null) => (micros === null ? 'not known' : showMoney(micros, currency));
  return (
    <section aria-labelledby="cost">
      <h2 id="cost">What it cost</h2>
      <table className={styles.cost}>
        <caption className="spoken">Cost of each product, planned and as drawn</caption>
        <thead>
          <tr>
            <th scope="col">Product</th>
            {kept && (
              <th scope="col" className="number">
                Planned
              </th>
            )}
            <th scope="col" className="number">
              Actual
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ product, amount, costMicros }) => (
            <tr key={product.id}>
              <th scope="row">
                <a href={`/shelf/${encodeURIComponent(product.id)}`}>{product.name}</a>{' '}
                <span className="soft">{amount}</span>
              </th>
              {kept && <td className="number">{money(planned(product.id))}</td>}
              <td className="number">{money(costMicros)}</td>
            </tr>
          ))}
          <tr className={styles.all}>
            <th scope="row">In all</th>
            {kept && <td className="number">{money(cost.planned)}</td>}
            <td className="number">
              {money(cost.actual)}
              <Difference {...cost} money={money} />
            </td>
          </tr>
        </tbody>
      </table>
      {!kept && <p>Planned: {money(cost.planned)}</p>}
      {(cost.perLitre || cost.perPlant) && (
        <p>
          {cost.perLitre && `${cost.perLitre} a litre`}
          {cost.perLitre && cost.perPlant && ', '}
          {cost.perPlant && `${cost.perPlant} a plant`}
        </p>
      )}
    </section>
  );
}

type DifferenceProps = Pick<MixedScreen['cost'], 'planned' | 'actual'> & { money: (micros: number) => string };

function Difference({ planned, actual, money }: DifferenceProps) {
  if (planned === null || actual === null || planned === actual) return null;
  const by = actual > planned ? actual - planned : planned - actual;
  return (
    <span className={styles.difference}>
      {money(by)} {actual > planned ? 'more' : 'less'} than planned
    </span>
  );
}
