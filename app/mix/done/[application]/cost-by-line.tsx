'use client';

import { ColumnHeads } from '@/app/_parts/column-heads';
import { useKeptMixes } from '@/app/_parts/kept-mixes';
import type { MixedScreen } from '@/lib/views/mixed';
import { showMoneyIfKnown } from '@/shared/measure/show';
import type { MixProgress } from '@/shared/mix/mix-progress';
import styles from './mixed.module.css';

type CostByLineProps = Pick<MixedScreen, 'application' | 'lines' | 'cost' | 'planned'> & { currency: string };

/**
 * What the mix cost as it was drawn, beside what the sheet had said. What it had said of each line is kept on the device
 * that the mix was made with; elsewhere it is what the books still tell.
 */
export function CostByLine({ application, lines, cost, planned, currency }: CostByLineProps) {
  const kept = useKeptMixes()?.find(({ finished }) => finished?.application === application) ?? null;
  const plannedOf = plannedBy(kept, planned);
  const plannedHead = plannedOf ? [{ number: kept || planned?.isAsSaid ? 'Planned' : 'By the recipe' }] : [];
  const money = (micros: number | null) => showMoneyIfKnown(micros, currency);
  const inAll = kept || planned?.isAsSaid ? cost.planned : (planned?.material ?? null);
  return (
    <section aria-labelledby="cost">
      <h2 id="cost">What it cost</h2>
      <table className={styles.cost}>
        <caption className="spoken">Cost of each product, planned and as drawn</caption>
        <ColumnHeads of={['Product', ...plannedHead, { number: 'Actual' }]} />
        <tbody>
          {lines.map(({ product, amount, costMicros }) => (
            <tr key={product.id}>
              <th scope="row">
                <a href={`/shelf/${encodeURIComponent(product.id)}`}>{product.name}</a>{' '}
                <span className="soft">{amount}</span>
              </th>
              {plannedOf && <td className="number">{plannedText(plannedOf(product.id), money)}</td>}
              <td className="number">{money(costMicros)}</td>
            </tr>
          ))}
          <tr className={styles.all}>
            <th scope="row">In all</th>
            {plannedOf && <td className="number">{money(inAll)}</td>}
            <td className="number">
              {money(cost.actual)}
              <Difference {...cost} money={money} />
            </td>
          </tr>
        </tbody>
      </table>
      {!kept && <Said planned={planned} said={money(cost.planned)} />}
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

/** What a line was to cost: undefined when it was not planned at all, null when it is not known. */
type PlannedOf = (product: string) => number | null | undefined;

function plannedBy(kept: MixProgress | null, planned: MixedScreen['planned']): PlannedOf | null {
  if (kept) return (product) => kept.plan.pours.find((pour) => pour.product === product)?.costMicros;
  return planned && ((product) => planned.lines.find((line) => line.product.id === product)?.micros);
}

const plannedText = (micros: number | null | undefined, money: (micros: number | null) => string): string =>
  micros === undefined ? 'not planned' : money(micros);

/** Where the planned lines come from, where it is not the sheet itself that is still here. */
function Said({ planned, said }: { planned: MixedScreen['planned']; said: string }) {
  if (!planned) {
    return (
      <p className="soft">
        The sheet said {said} in all. What it said of each product was kept only where it was mixed, and these books
        cannot tell it any more.
      </p>
    );
  }
  return planned.isAsSaid ? (
    <p className="soft">
      Planned: by its recipe for what was sprayed, from the bottles as they stood before. That comes to what the sheet
      said.
    </p>
  ) : (
    <p className="soft">
      The sheet said {said} in all, and its lines were kept only where it was mixed. By the recipe: for what was
      sprayed, from the bottles as they stood before, and what was short at the offers of today.
    </p>
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
