import type { Notice, NoticesScreen } from '@/lib/views/keep-out-notice';
import { KeepOutMark } from '../../_parts/keep-out-mark';
import { Square } from '../../_parts/square';
import styles from './notice.module.css';

type NoticeSheetProps = { notice: Notice; screen: NoticesScreen };

/** One notice, large enough to be read from the path: keep out, where, until when; then what was applied, and whom to ask. */
export function NoticeSheet({ notice, screen: { printedAt, shop } }: NoticeSheetProps) {
  const { id, bench, place, until, because, applied, live, square } = notice;
  return (
    <article className={styles.sheet} aria-labelledby={`notice-${id}`}>
      <header className={styles.head}>
        <KeepOutMark state={until === null ? 'unknown' : 'closed'} />
        <h2 id={`notice-${id}`}>
          KEEP OUT <small>{bench}</small>
        </h2>
      </header>
      {place && <p>{place}</p>}
      <p className={styles.until}>
        {until === null ? 'until this notice is taken down (not known)' : `until ${until}`}
      </p>
      <p>Times are those of {shop.zone}.</p>
      {because.length > 0 && <p>{because.join(' · ')}</p>}
      {applied.map((one) => (
        <dl key={one.id} className={styles.applied}>
          <dt>What was applied</dt>
          <dd>
            <b>{one.recipe}</b>: {one.products.join('; ')}
          </dd>
          <dt>When</dt>
          <dd>
            {one.from} to {one.to}
          </dd>
          <dt>Restricted-entry interval</dt>
          <dd>{one.interval} from its end, as recorded</dd>
        </dl>
      ))}
      <footer className={styles.foot}>
        <div className={styles.square}>
          <Square of={square} />
        </div>
        <div>
          <p>
            <b>{shop.name}</b>
            {shop.address && <>, {shop.address}</>}
          </p>
          <p>{shop.contact ? `Ask: ${shop.contact}` : 'Ask the staff before you go in.'}</p>
          <p className={styles.live}>The state now: {live}</p>
          <p>Printed {printedAt}. What is sprayed after that is not on it. The labels govern.</p>
        </div>
      </footer>
    </article>
  );
}
