import type { UnreadShown } from '@/lib/views/unread';
import { PutRightForm } from './put-right-form';
import styles from './unread.module.css';

/** What of the shop cannot be read, each with a form that puts it right. Nothing when all of it can be. */
export function UnreadThings({ shop, things, caused }: { shop: string; things: UnreadShown[]; caused: string[] }) {
  if (things.length === 0) return null;
  return (
    <section aria-labelledby="unread" className={styles.unread}>
      <h2 id="unread">{things.length === 1 ? '1 thing cannot be read' : `${things.length} things cannot be read`}</h2>
      <p>
        The rest of the shop is as it was. Write what it should say, or leave a value empty for not known. Until then no
        shop file can be saved or brought in.
      </p>
      {caused.length > 0 && <p className="soft">Missing only because of it: {caused.join(', ')}.</p>}
      <ul>
        {things.map((thing) => (
          <li key={thing.key}>
            <h3>{thing.what}</h3>
            {thing.benches && <p className="grave">{thing.benches}</p>}
            <PutRightForm shop={shop} thing={thing} />
          </li>
        ))}
      </ul>
    </section>
  );
}
