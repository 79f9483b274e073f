'use client';

import { useEffect, useRef } from 'react';

/**
 * The back button of a phone is one screen back in a mix, and never leads out of it. One entry is kept ahead of the page
 * in the history; going back takes it away, does the step, and lays another.
 */
export function useBack(back: () => void): void {
  const latest = useRef(back);
  useEffect(() => {
    latest.current = back;
  });
  useEffect(() => {
    const lay = () => history.pushState({ ...history.state, mixing: true }, '', location.href);
    if (!history.state?.mixing) lay();
    const went = () => {
      lay();
      latest.current();
    };
    window.addEventListener('popstate', went);
    return () => window.removeEventListener('popstate', went);
  }, []);
}
