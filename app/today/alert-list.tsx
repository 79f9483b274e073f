import { failedTries } from '@/lib/alerts/tries';
import type { TodayScreen } from '@/lib/views/today';
import { SeverityLines, SeverityMark } from '../_parts/flag-lines';
import { wentInWords } from '../_parts/way-names';
import styles from './today.module.css';

/**
 * What is to be told and stands nowhere else on the page; and that alerts cannot be told elsewhere. Notes, which may hold
 * for months, are counted and opened when somebody wants them.
 */
export function AlertList({ screen: { id, alerts, oldBackup } }: { screen: TodayScreen }) {
  const failed = failedTries(id).map((last) => ({
    ...{ key: last.way, severity: 'warn' as const },
    message: `${wentInWords(last)} Look in Setup, Alerts.`,
  }));
  const backup =
    oldBackup === null
      ? []
      : [{ key: 'backup', severity: 'warn' as const, message: `${oldBackup} Make one in Setup.` }];
  const lines = [
    ...failed,
    ...backup,
    ...alerts.map(({ key, severity, sentence }) => ({ key, severity, message: sentence })),
  ];
  if (lines.length === 0) return null;
  const notes = lines.filter(({ severity }) => severity === 'note');
  return (
    <section aria-label="To know today" className={styles.alerts}>
      {notes.length > 0 && (
        <details className={styles.notes}>
          <summary>
            <SeverityMark severity="note" />
            {notes.length === 1 ? '1 note' : `${notes.length} notes`}
          </summary>
          <SeverityLines lines={notes} />
        </details>
      )}
      <SeverityLines lines={lines.filter(({ severity }) => severity !== 'note')} />
    </section>
  );
}
