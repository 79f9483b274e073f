import type { ReactNode } from 'react';
import styles from './empty-place.module.css';

type EmptyPlaceProps = {
  /** What belongs here. */
  children: ReactNode;
  /** The one next step. */
  step?: { href: string; text: string };
};

/** A place with nothing in it yet: what belongs there, and the one next step. */
export function EmptyPlace({ children, step }: EmptyPlaceProps) {
  return (
    <div className={styles.empty}>
      <p>{children}</p>
      {step && (
        <a className="button" href={step.href}>
          {step.text}
        </a>
      )}
    </div>
  );
}
