import type { AcceptScreen } from '@/lib/views/accept-rows';
import { AcceptForm } from './accept-form';
import styles from './unread.module.css';

/** The damaged rows with what they hold, for whoever knows that it is true. */
export function AcceptRows({ screen }: { screen: AcceptScreen }) {
  const { rows, more } = screen;
  return (
    <section aria-labelledby="accept" className={styles.unread}>
      <h2 id="accept">Or accept what was changed</h2>
      <p>Only if you know that all of it is true, such as values that you put back by hand:</p>
      <ul>
        {rows.map(({ key, name, says }) => (
          <li key={key}>
            <b>{name}</b>: <span className="soft">{says}</span>
          </li>
        ))}
      </ul>
      {more > 0 && <p>{more} more.</p>}
      <AcceptForm screen={screen} />
    </section>
  );
}
