import type { ReactNode } from 'react';
import type { Fig } from '@/lib/views/figures';
import styles from './figure.module.css';
import { shownText, type Ways } from './shown-text';

type FigureProps = {
  of: Fig;
  ways: Ways;
  /** Words to show instead, where the place beside it says part of the value already. */
  children?: ReactNode;
  /** Whether those are a sentence, which runs over several lines. */
  isSentence?: boolean;
};

/** A figure with its unit, dotted underneath because it opens: how it was reached, from what, and where that came from. */
export function Figure({ of, ways, children, isSentence = false }: FigureProps) {
  const look = of.value.kind === 'unknown' ? styles.unknown : styles.figure;
  return (
    <a
      className={isSentence ? `${look} ${styles.sentence}` : look}
      href={`/working?figure=${encodeURIComponent(of.at)}`}
      data-figure={of.at}
    >
      {children ?? shownText(of.value, ways)}
    </a>
  );
}
