import type { ReplaceShown } from '@/lib/views/replace-shown';
import { showMoney } from '@/shared/measure/show';
import { showDay } from '@/shared/time/show-day';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import styles from './product.module.css';

/** What is usable of it would cost to buy again, by which price and since when; and the way to one more offer. */
export function OffersFoot({ product, replace, ways }: { product: string; replace: ReplaceShown; ways: Ways }) {
  const { cost, by } = replace;
  const why = cost.value.kind === 'unknown' ? cost.value.because : null;
  return (
    <div className={styles.foot}>
      <p>
        To replace what is usable: <Figure of={cost} ways={ways} />
        {by && <span className="soft">. {byText(by, ways)}</span>}
        {why && <span className="grave">. {why}</span>}
      </p>
      <p className={styles.links}>
        <a href={`/shelf/${encodeURIComponent(product)}/offer/new`}>Add an offer</a>
        <a href="/shelf/suppliers">Suppliers</a>
        <a href={`/buy/equivalents?product=${encodeURIComponent(product)}`}>Cheaper equivalents</a>
      </p>
    </div>
  );
}

/** "2 × 1 qt at $9.40 a pack since Tue 3 March, Hollow Supply, with its share of the freight." */
function byText(
  { packs, packText, price, since, supplier, atLeast }: NonNullable<ReplaceShown['by']>,
  ways: Ways,
): string {
  const holds = since === null ? 'since when nobody noted' : `since ${showDay(since, ways.today)}`;
  const from = atLeast === null ? '' : ` from ${atLeast} packs on,`;
  return `${packs} × ${packText} at ${showMoney(price, ways.currency)} a pack${from} ${holds}, ${supplier}, with its share of the freight.`;
}
