import type { ReactNode } from 'react';
import type { Fig } from '@/lib/views/figures';
import styles from './figure.module.css';
import { shownText, type Ways } from './shown-text';

type FigureProps = {
  of: Fig;
  ways: Ways;
  /** Words to show instead, where the place beside it says part of the value already. */
  children?: ReactNode;
};

/** A figure with its unit, dotted underneath because it opens: how it was reached, from what, and where that came from. */
export function Figure({ of, ways, children }: FigureProps) {
  return (
    <a
      className={of.value.kind === 'unknown' ? styles.unknown : styles.figure}
      href={`/working?figure=${encodeURIComponent(of.at)}`}
      data-figure={of.at}
    >
      {children ?? shownText(of.value, ways)}
    </a>
  );
}
