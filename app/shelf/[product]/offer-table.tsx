import type { OfferShown } from '@/lib/views/offers-shown';
import { showMoney } from '@/shared/measure/show';
import { showDayShort } from '@/shared/time/show-day';
import { ColumnHeads } from '../../_parts/column-heads';
import { Figure } from '../../_parts/figure';
import type { Ways } from '../../_parts/shown-text';
import { PriceSpark } from './price-spark';
import styles from './product.module.css';

type OfferTableProps = {
  offers: OfferShown[];
  ways: Ways;
  /** What names each line: who sells it, or, on the page of a supplier, what it is. */
  by?: 'supplier' | 'product';
};

/** Who sells it in which pack, at what price now and before, and how soon. Those that were put away stand apart. */
export function OfferTable({ offers, ways, by = 'supplier' }: OfferTableProps) {
  const away = offers.filter(({ offer }) => offer.putAway);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="Offers as a table">
      <table className={styles.table}>
        <ColumnHeads
          of={[
            by === 'supplier' ? 'Supplier and pack' : 'Product and pack',
            { number: 'Price' },
            { number: 'By the unit' },
          ]}
        />
        <tbody>
          {offers
            .filter(({ offer }) => !offer.putAway)
            .map((shown) => (
              <OfferRow key={shown.offer.id} shown={shown} ways={ways} by={by} />
            ))}
        </tbody>
        {away.length > 0 && (
          <tbody>
            <tr>
              <th scope="rowgroup" colSpan={3} className="soft">
                Put away: counted in no price
              </th>
            </tr>
            {away.map((shown) => (
              <OfferRow key={shown.offer.id} shown={shown} ways={ways} by={by} />
            ))}
          </tbody>
        )}
      </table>
    </section>
  );
}

function OfferRow({ shown, ways, by }: { shown: OfferShown; ways: Ways; by: 'supplier' | 'product' }) {
  const { offer, href, unitPrice, unit, isCheapest, prices } = shown;
  const name = by === 'supplier' ? offer.supplier.name : offer.product.name;
  return (
    <tr>
      <th scope="row">
        <a href={href} className={styles.change} aria-label={`${name}, ${offer.packText}: prices and changes`}>
          {name}
        </a>
        <span className={styles.under}>{offer.packText}</span>
        <span className={`soft ${styles.under}`}>{leadText(offer.leadDays)}</span>
      </th>
      <td className="number">
        <span className="unbroken">
          <PriceSpark prices={prices} today={ways.today} /> {showMoney(offer.price, ways.currency)}
        </span>
        {offer.breaks.map(({ atLeast, price }) => (
          <span key={atLeast} className={`soft ${styles.under}`}>
            {showMoney(price, ways.currency)} from {atLeast} packs
          </span>
        ))}
        <Before shown={shown} ways={ways} />
        <Later shown={shown} ways={ways} />
      </td>
      <td className="number">
        <Figure of={unitPrice} ways={ways} />
        <span className={`soft ${styles.under}`}>a {unit}</span>
        {isCheapest && <b className={styles.under}>cheapest</b>}
      </td>
    </tr>
  );
}

/** What it cost before, and whether that was more or less, in words. */
function Before({ shown: { offer, before }, ways }: { shown: OfferShown; ways: Ways }) {
  if (!before || before.price === offer.price) return null;
  return (
    <span className={`soft ${styles.under}`}>
      {before.price < offer.price ? '▲ dearer' : '▼ cheaper'} than {showMoney(before.price, ways.currency)}
      {before.until === null ? ' before' : ` until ${showDayShort(before.until, ways.today)}`}
    </span>
  );
}

/** What it will cost, and from when. */
function Later({ shown: { offer }, ways }: { shown: OfferShown; ways: Ways }) {
  const [next] = offer.notYet ? [offer] : offer.later;
  if (!next?.since) return null;
  return (
    <span className={`soft ${styles.under}`}>
      {offer.notYet ? 'only' : showMoney(next.price, ways.currency)} from {showDayShort(next.since, ways.today)}
    </span>
  );
}

function leadText(days: number | null): string {
  if (days === null) return 'lead time not known, so no order-by day';
  return days === 0 ? 'there the same day' : `there in ${days} working ${days === 1 ? 'day' : 'days'}`;
}
