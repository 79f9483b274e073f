import type { Offer } from '@/lib/engine/shop';
import { showMoney } from '@/shared/measure/show';
import type { Ways } from '../../_parts/shown-text';
import styles from './product.module.css';

/** Who sells it in which pack, at what price and how soon. Typed in as it stands, so nothing here opens. */
export function OfferTable({ offers, ways }: { offers: Offer[]; ways: Ways }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="Offers as a table">
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Supplier</th>
            <th scope="col">Pack</th>
            <th scope="col" className="number">
              Price
            </th>
            <th scope="col">Lead time</th>
          </tr>
        </thead>
        <tbody>
          {offers.map((offer) => (
            <tr key={offer.id}>
              <th scope="row">{offer.supplier.name}</th>
              <td>{offer.packText}</td>
              <td className="number">
                {showMoney(offer.price, ways.currency)}
                {offer.breaks.map(({ atLeast, price }) => (
                  <span key={atLeast} className="soft">
                    {' '}
                    · {showMoney(price, ways.currency)} from {atLeast} packs
                  </span>
                ))}
              </td>
              <td>{leadText(offer.leadDays)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function leadText(days: number | null): string {
  if (days === null) return 'not known';
  return days === 0 ? 'the same day' : `${days} working ${days === 1 ? 'day' : 'days'}`;
}
