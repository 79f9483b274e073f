import type { RecordSeen } from '@/lib/views/record';
import { ColumnHeads } from './column-heads';
import { PassedLine } from './passed-line';
import styles from './record-facts.module.css';

type Of = {
  record: Pick<RecordSeen, 'when' | 'facts' | 'products' | 'drawn' | 'passed' | 'findings'>;
  isPaper?: boolean;
};

/** Everything that a record says, on a page and on paper: its facts, what went in, from which bottles, and what was passed. */
export function RecordFacts({ record, isPaper = false }: Of) {
  const { when, facts, products, drawn, passed, findings } = record;
  return (
    <>
      <dl className={styles.facts}>
        {facts.map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd className={value === null ? 'grave' : undefined}>{value ?? 'not known'}</dd>
          </div>
        ))}
      </dl>
      <Products when={when} products={products} />
      {drawn.length > 0 && (
        <p className={styles.line}>
          <b>Drawn from </b>
          {drawn.map(({ label, href, amount }, at) => (
            <span key={`${href} ${amount}`}>
              {at > 0 && '; '}
              {amount} from {isPaper ? label : <a href={href}>{label}</a>}
            </span>
          ))}
        </p>
      )}
      {passed.map(({ rule, reason }) => (
        <p key={`${rule} ${reason}`} className={styles.line}>
          <PassedLine rule={rule} reason={reason} />
        </p>
      ))}
      {findings.map((message) => (
        <p key={message} className={styles.line}>
          <b>▲ Look at</b>: {message}
        </p>
      ))}
    </>
  );
}

function Products({ when, products }: Pick<RecordSeen, 'when' | 'products'>) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label={`What went in, ${when}`}>
      <table className={styles.products}>
        <ColumnHeads of={['Product', 'Registration number', 'Active ingredients', 'Interval', 'Dose', 'Amount']} />
        <tbody>
          {products.map(({ id, name, registration, actives, interval, dose, amount }) => (
            <tr key={id}>
              <th scope="row">{name}</th>
              <td>{registration ?? 'not on record'}</td>
              <td>{actives ?? 'not on record'}</td>
              <td>{interval ?? 'not known'}</td>
              <td>{dose}</td>
              <td>{amount ?? 'not noted'}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
