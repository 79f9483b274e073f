import type { Fig } from '@/lib/views/figures';
import type { PurchaseList } from '@/lib/views/purchase-list';
import { showMoneyIfKnown } from '@/shared/measure/show';
import type { Micros } from '@/shared/quantity/amounts';
import { showDay } from '@/shared/time/show-day';
import { Figure } from '../../../_parts/figure';
import type { Ways } from '../../../_parts/shown-text';
import styles from '../orders.module.css';

type ListTotalsProps = { list: PurchaseList; ways: Ways };

/** What a list comes to, beside what the supplier asks of an order, and when it should come. */
export function ListTotals({ list: { supplier, sums, figures, expectedOn }, ways }: ListTotalsProps) {
  const { minimumOrder, freeFreightOver } = supplier;
  return (
    <>
      <p className="apart">
        Goods <Sum of={sums.goods} figure={figures?.goods} ways={ways} /> · freight{' '}
        <Sum of={sums.freight} figure={figures?.freight} ways={ways} /> ·{' '}
        <b>
          in all <Sum of={sums.total} figure={figures?.total} ways={ways} />
        </b>
        {figures ? (
          <>
            {' '}
            · expected <Figure of={figures.expectedOn} ways={ways} />
          </>
        ) : (
          expectedOn && ` · expected ${showDay(expectedOn, ways.today)}`
        )}
      </p>
      <ul className={styles.asked}>
        <Asked
          name="Smallest order they take"
          {...{ asked: minimumOrder, missing: sums.toMinimum, figure: figures?.toMinimum, ways, isGrave: true }}
        />
        <Asked
          name="No freight from"
          {...{ asked: freeFreightOver, missing: sums.toFreeFreight, figure: figures?.toFreeFreight, ways }}
        />
      </ul>
    </>
  );
}

type AskedProps = {
  name: string;
  /** What the supplier asks for; null when there is no such threshold. */
  asked: Micros | null;
  missing: Micros | null;
  figure: Fig | undefined;
  ways: Ways;
  isGrave?: boolean;
};

/** One threshold of the supplier: reached, or by how much not. */
function Asked({ name, asked, missing, figure, ways, isGrave = false }: AskedProps) {
  if (asked === null || asked === 0) return null;
  const isShort = missing === null || missing > 0;
  return (
    <li className={isShort && isGrave ? 'grave' : undefined}>
      {isShort && isGrave && '▲ '}
      {name} {showMoneyIfKnown(asked, ways.currency)}:{' '}
      {missing === 0 ? <Reached figure={figure} ways={ways} /> : <Sum of={missing} figure={figure} ways={ways} />}
      {missing !== null && missing > 0 && ' short'}
    </li>
  );
}

const Reached = ({ figure, ways }: Pick<AskedProps, 'figure' | 'ways'>) =>
  figure ? (
    <Figure of={figure} ways={ways}>
      reached
    </Figure>
  ) : (
    'reached'
  );

/** An amount of money, which opens where it has a working. */
export function Sum({ of, figure, ways }: { of: Micros | null; figure: Fig | undefined; ways: Ways }) {
  return figure ? <Figure of={figure} ways={ways} /> : showMoneyIfKnown(of, ways.currency);
}
