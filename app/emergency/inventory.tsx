import type { EmergencyScreen } from '@/lib/views/emergency';
import { ColumnHeads } from '../_parts/column-heads';
import { Figure } from '../_parts/figure';
import styles from './emergency.module.css';

/** What stands in the store, where, and how much: for the fire service, on a sheet of its own. */
export function Inventory({ screen: { store, ways, shop, asOf } }: { screen: EmergencyScreen }) {
  return (
    <section aria-labelledby="store" className={styles.store}>
      <h2 id="store">What is in the store</h2>
      <p className="soft small">
        {shop.name}
        {shop.address && `, ${shop.address}`}, as of {asOf}
      </p>
      {store.length === 0 && <p>Nothing is on the shelf.</p>}
      {store.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
        <section className="sideways" tabIndex={0} aria-label="The store as a table">
          <table>
            <ColumnHeads
              of={['Where', 'Product', 'Signal word', { number: 'Containers' }, { number: 'Amount' }, 'Storage']}
            />
            {store.map(({ place, lines }) => (
              <tbody key={place ?? ''}>
                {lines.map(({ product, signalWord, containers, amount, storage }, at) => (
                  <tr key={product}>
                    {at === 0 && (
                      <th scope="rowgroup" rowSpan={lines.length}>
                        {place ?? 'not noted'}
                      </th>
                    )}
                    <td>{product}</td>
                    <td>{signalWord ?? 'none entered'}</td>
                    <td className="number">{containers}</td>
                    <td className="number">
                      <Figure of={amount} ways={ways} />
                    </td>
                    <td>{storage ?? ''}</td>
                  </tr>
                ))}
              </tbody>
            ))}
          </table>
        </section>
      )}
    </section>
  );
}
