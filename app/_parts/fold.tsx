import type { ReactNode } from 'react';
import styles from './fold.module.css';

type FoldProps = {
  title: string;
  /** What it holds, in a few words, for when it is shut. */
  digest: string;
  /** What else is to be said while it is shut. */
  notes?: ReactNode;
  isOpen: boolean;
  children: ReactNode;
};

/** A part of a page or of a form that is opened when it is wanted. */
export function Fold({ title, digest, notes, isOpen, children }: FoldProps) {
  return (
    <details className={styles.fold} open={isOpen}>
      <summary>
        <span className={styles.title}>{title}</span>
        {digest && <span className={`${styles.digest} ${styles.shut}`}>{digest}</span>}
        {notes && <span className={styles.shut}>{notes}</span>}
      </summary>
      <div className={styles.fields}>{children}</div>
    </details>
  );
}
