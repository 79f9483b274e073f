import type { ComingIn as Coming } from '@/lib/views/coming-in';
import { DueWords } from '../_parts/due-words';
import type { Ways } from '../_parts/shown-text';
import styles from './coming-in.module.css';

/** The orders that should be here or come today, each one step from being received. */
export function ComingIn({ coming, ways }: { coming: Coming[]; ways: Ways }) {
  if (coming.length === 0) return null;
  return (
    <ul aria-label="Coming in">
      {coming.map(({ order, href, receiveHref, supplier, packs, due, expectedOn }) => (
        <li key={order} className={styles.line}>
          <a className={styles.order} href={href}>
            {supplier}, {packs} {packs === 1 ? 'pack' : 'packs'}
          </a>
          <a className={styles.receive} href={receiveHref}>
            Receive<span className="spoken"> what came from {supplier}</span>
          </a>
          <small>
            <DueWords due={due} expectedOn={expectedOn} ways={ways} />
          </small>
        </li>
      ))}
    </ul>
  );
}
