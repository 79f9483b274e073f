'use client';

import { useEffect, useState } from 'react';

/** What is typed into a form, and how the thing stood when the typing began. */
type Held<T> = { draft: T; standing: string; isTouched: boolean };

export type Draft<T> = Held<T> & {
  /** Change what is typed, from what is typed now. */
  change: (next: (draft: T) => T) => void;
  /** Begin again from what is saved. */
  forget: () => void;
};

/**
 * Keeps what is typed into a form with any number of rows through a reload, for as long as the tab is open, together
 * with how the thing stood then: a change that somebody else made meanwhile is noticed when it is sent.
 *
 * Takes  a key that is the form's own, what it shows to begin with, and the fingerprint of what is saved
 */
export function useDraft<T>(key: string, initial: T, standing: string): Draft<T> {
  const [held, setHeld] = useState<Held<T>>({ draft: initial, standing, isTouched: false });
  useEffect(() => {
    const kept = sessionStorage.getItem(key);
    if (kept !== null) setHeld(JSON.parse(kept));
  }, [key]);
  useEffect(() => {
    if (held.isTouched) sessionStorage.setItem(key, JSON.stringify(held));
  }, [key, held]);
  return {
    ...held,
    change: (next) => setHeld((before) => ({ ...before, draft: next(before.draft), isTouched: true })),
    forget: () => {
      sessionStorage.removeItem(key);
      setHeld({ draft: initial, standing, isTouched: false });
    },
  };
}
