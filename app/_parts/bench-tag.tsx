import styles from './bench-tag.module.css';

/** A bench by its plant tag. */
export function BenchTag({ name }: { name: string }) {
  return (
    <span className={styles.tag}>
      <span className={styles.name}>{name}</span>
    </span>
  );
}
