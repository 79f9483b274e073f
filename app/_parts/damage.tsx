import styles from './damage.module.css';

/** That not everything is as it was written, where somebody looks at the benches or the records. */
export function Damage({ sentence }: { sentence: string | null }) {
  if (sentence === null) return null;
  return (
    <p role="alert" className={styles.damage}>
      <b>Not everything is as it was written.</b> {sentence} Keep out of its benches until somebody has looked.{' '}
      <a href="/setup#database">Setup tells everything that was found, and the way back.</a>
    </p>
  );
}
