import type { PurchaseList } from '@/lib/views/purchase-list';
import { moneyText } from '@/shared/measure/money';
import { showMoneyIfKnown } from '@/shared/measure/show';
import { showDay } from '@/shared/time/show-day';
import { ColumnHeads } from '../../../_parts/column-heads';
import type { Ways } from '../../../_parts/shown-text';
import styles from '../orders.module.css';
import { ListTotals, Sum } from './list-totals';
import { MarkOrdered } from './mark-ordered';

type SupplierListProps = { list: PurchaseList; shop: string; ways: Ways };

/** What is ordered from one supplier, to be printed, sent as text, or marked as ordered. */
export function SupplierList({ list, shop, ways }: SupplierListProps) {
  const { supplier, note, order, placedOn, text, subject } = list;
  const id = `list-${supplier.id}-${order ?? 'draft'}`;
  return (
    <section aria-labelledby={id} className={styles.list}>
      <h2 id={id}>
        {supplier.name}, {showDay(placedOn, ways.today)}
      </h2>
      <Lines list={list} ways={ways} />
      <ListTotals list={list} ways={ways} />
      {note && <p>{note}</p>}
      <div className={styles.tools}>
        {order === null && <MarkOrdered {...sentOf(list, shop)} />}
        <a className="button" href={`mailto:?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(text)}`}>
          Send by e-mail
        </a>
      </div>
      <details className={styles.quiet}>
        <summary>The same as text, to copy</summary>
        <textarea className={styles.text} readOnly value={text} aria-label={`The list for ${supplier.name} as text`} />
      </details>
    </section>
  );
}

function Lines({ list: { lines, figures }, ways }: Pick<SupplierListProps, 'list' | 'ways'>) {
  return (
    <table>
      <ColumnHeads of={[{ number: 'Packs' }, 'Product', { number: 'One at' }, { number: 'In all' }]} />
      <tbody>
        {lines.map(({ key, product, pack, count, price, cost }, place) => (
          <tr key={key}>
            <td className="number">{count}</td>
            <th scope="row">
              {product}, {pack}
            </th>
            <td className="number">{showMoneyIfKnown(price, ways.currency)}</td>
            <td className="number">
              <Sum of={cost} figure={figures?.lines[place]} ways={ways} />
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The list as the form of an order sends it. */
function sentOf({ formId, supplier, lines, placedOn, entered, note }: PurchaseList, shop: string) {
  const packs = lines.map(({ offer, count }) => ({ offer, count: String(count) }));
  const rows = lines.flatMap(({ offer, count, price }, row): [string, string][] => [
    [`lines[${row}].offer`, offer],
    [`lines[${row}].count`, String(count)],
    [`lines[${row}].price`, price === null ? '' : moneyText(price)],
  ]);
  const { expectedOn, freight } = entered;
  const aside = { expectedOn: expectedOn ?? '', freight: freight === null ? '' : moneyText(freight), note: note ?? '' };
  return { shop, supplier: supplier.id, formId, packs, fields: { placedOn, ...aside, ...Object.fromEntries(rows) } };
}
