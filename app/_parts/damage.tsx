import styles from './damage.module.css';

/** That the records are not as they were written, where somebody looks at them. */
export function Damage({ sentence }: { sentence: string | null }) {
  if (sentence === null) return null;
  return (
    <p role="alert" className={styles.damage}>
      <b>The records are not as they were written.</b> {sentence} Every bench is kept out of until somebody has looked.
      Restore a backup, or have it looked at; <code>npm run -s shop -- verify</code> tells everything that was found.
    </p>
  );
}
