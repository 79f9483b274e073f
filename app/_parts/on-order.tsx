import type { OnOrderSeen } from '@/lib/views/on-order';
import { Figure } from './figure';
import styles from './on-order.module.css';
import type { Ways } from './shown-text';

/** What of a product is on its way, when it comes, and whether it will be enough. */
export function OnOrder({ of, ways }: { of: OnOrderSeen; ways: Ways }) {
  const { onOrder, expectedOn, href, isLate, stillRunsOutOn, packs } = of;
  return (
    <span className={styles.line}>
      <a href={href}>{packs} on order</a>, <Figure of={onOrder} ways={ways} />,{' '}
      {isLate ? <b className="grave">▲ late since </b> : 'expected '}
      <Figure of={expectedOn} ways={ways} />
      {stillRunsOutOn !== null && (
        <span className="grave">
          {stillRunsOutOn.value.kind === 'unknown' ? '; whether that is enough is ' : '; all the same it runs out '}
          <Figure of={stillRunsOutOn} ways={ways} />
        </span>
      )}
    </span>
  );
}
