'use client';

import { lazy, type MouseEvent, Suspense, useEffect, useState } from 'react';
import styles from './find-anything.module.css';
import { useOneKey } from './use-one-key';

const loadDialog = () => import('./find-dialog');

// It comes after the page, but before anybody can have pressed the key and typed on.
const FindDialog = lazy(async () => ({ default: (await loadDialog()).FindDialog }));

/** The way to find anything from anywhere: a link to the page that searches, which opens in place where scripts run. */
export function FindAnything() {
  const [isOpen, setIsOpen] = useState(false);
  useEffect(() => {
    loadDialog().catch(() => null);
  }, []);
  useOneKey('/', () => setIsOpen(true));
  const openInPlace = (event: MouseEvent) => {
    // A click that asks for a new tab gets the page.
    if (event.metaKey || event.ctrlKey || event.shiftKey) return;
    event.preventDefault();
    setIsOpen(true);
  };
  return (
    <>
      <a
        className={styles.find}
        href="/search"
        aria-haspopup="dialog"
        aria-keyshortcuts="/"
        title="Find anything (key /)"
        onClick={openInPlace}
      >
        Find anything <kbd>/</kbd>
      </a>
      {isOpen && (
        <Suspense>
          <FindDialog onClose={() => setIsOpen(false)} />
        </Suspense>
      )}
    </>
  );
}
