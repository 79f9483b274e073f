import type { AcceptScreen } from '@/lib/views/accept-rows';
import { acceptRowsAction } from './accept-actions';
import { AcceptForm } from './accept-form';
import styles from './unread.module.css';

/** The damaged rows with what they hold, for whoever knows that it is true. */
export function AcceptRows({ screen }: { screen: AcceptScreen }) {
  return (
    <section aria-labelledby="accept" className={styles.unread}>
      <h2 id="accept">Or accept what was changed</h2>
      <p>Only if you know that all of it is true, such as values that you put back by hand:</p>
      <DamagedRows screen={screen} />
      <AcceptForm screen={screen} action={acceptRowsAction} name="rows" />
    </section>
  );
}

/** What is damaged, each with what it says or what is wrong. */
export function DamagedRows({ screen: { rows, more } }: { screen: AcceptScreen }) {
  return (
    <>
      <ul>
        {rows.map(({ key, name, says, href }) => (
          <li key={key}>
            {href ? (
              <>
                <a href={href}>{name}</a>: <span className="soft">{says}</span>
              </>
            ) : (
              <details>
                <summary>{name}</summary>
                <span className="soft">{says}</span>
              </details>
            )}
          </li>
        ))}
      </ul>
      {more > 0 && <p>{more} more.</p>}
    </>
  );
}
