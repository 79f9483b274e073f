import styles from './damage.module.css';

/** That something of the shop cannot be read, where somebody looks at what depends on it. */
export function Unread({ sentence }: { sentence: string | null }) {
  if (sentence === null) return null;
  return (
    <p role="alert" className={styles.damage}>
      <b>Something cannot be read.</b> {sentence} <a href="/setup">Put it right under Setup</a>.
    </p>
  );
}
