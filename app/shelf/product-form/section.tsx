'use client';

import type { ReactNode } from 'react';
import { SeverityMark } from '../../_parts/flag-lines';
import { Fold } from '../../_parts/fold';
import styles from './product-form.module.css';
import { useTyping } from './typed';

type SectionProps = {
  title: string;
  /** What it holds, in a few words, for when it is shut. */
  digest: string;
  /** Whether a field belongs in it, by its name. */
  holds: (name: string) => boolean;
  children: ReactNode;
};

/** A part of the form that is opened when it is wanted, and by itself when something in it was filled in wrong. */
export function Section({ title, digest, holds, children }: SectionProps) {
  const { state, unknowns } = useTyping();
  const faulty = state.status === 'invalid' && Object.keys(state.fields).some(holds);
  const missing = unknowns.filter(({ field }) => holds(field));
  return (
    <Fold
      {...{ title, digest, isOpen: faulty }}
      notes={
        missing.length > 0 &&
        missing.map(({ field, says, grave }) => (
          <span key={field} className={styles.missing} data-grave={grave ? '' : undefined}>
            <SeverityMark severity={grave ? 'stop' : 'note'} />
            <span>{says}</span>
          </span>
        ))
      }
    >
      {children}
    </Fold>
  );
}
