import { failedTries } from '@/lib/alerts/tries';
import type { TodayScreen } from '@/lib/views/today';
import { SeverityLines } from '../_parts/flag-lines';
import { wentInWords } from '../_parts/way-names';
import styles from './today.module.css';

/** What is to be told and stands nowhere else on the page; and that alerts cannot be told elsewhere. */
export function AlertList({ screen: { id, alerts } }: { screen: TodayScreen }) {
  const failed = failedTries(id).map((last) => ({
    ...{ key: last.way, severity: 'warn' as const },
    message: `${wentInWords(last)} Look in Setup, Alerts.`,
  }));
  const lines = [...failed, ...alerts.map(({ key, severity, sentence }) => ({ key, severity, message: sentence }))];
  if (lines.length === 0) return null;
  return (
    <section aria-label="To know today" className={styles.alerts}>
      <SeverityLines lines={lines} />
    </section>
  );
}
