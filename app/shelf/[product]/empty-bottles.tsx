import { clock } from '@/lib/clock';
import { emptyBottles } from '@/lib/views/empty-bottles';
import { showDayShort } from '@/shared/time/show-day';
import styles from './product.module.css';

/** More of a product can come in; and what was used up keeps its ledger. */
export async function EmptyBottles({ product }: { product: string }) {
  const empty = await emptyBottles(clock, product);
  if (!empty) return null;
  const { bottles, today } = empty;
  return (
    <>
      <p className="apart unprinted">
        <a className="button" href={`/shelf/receive?product=${encodeURIComponent(product)}`}>
          Receive more
        </a>
      </p>
      {bottles.length > 0 && (
        <details className={styles.empty}>
          <summary>
            Empty: {bottles.length} {bottles.length === 1 ? 'bottle' : 'bottles'}
          </summary>
          <ul>
            {bottles.map(({ href, name, receivedOn }) => (
              <li key={href}>
                <a href={href}>{name}</a> <span className="soft">received {showDayShort(receivedOn, today)}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
