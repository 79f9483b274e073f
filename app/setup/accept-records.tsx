import type { AcceptScreen } from '@/lib/views/accept-rows';
import { acceptRecordsAction } from './accept-actions';
import { AcceptForm } from './accept-form';
import { DamagedRows } from './accept-rows';
import styles from './unread.module.css';

/** The records that do not fit their chain, for whoever knows that they are true as they stand. */
export function AcceptRecords({ screen }: { screen: AcceptScreen }) {
  return (
    <section aria-labelledby="accept-records" className={styles.unread}>
      <h2 id="accept-records">Or accept the records as they stand</h2>
      <p>
        Only if you know that what they say now is true. The break stays in the log for good, with your name and your
        reason.
      </p>
      <DamagedRows screen={screen} />
      <AcceptForm screen={screen} action={acceptRecordsAction} name="records" />
    </section>
  );
}
