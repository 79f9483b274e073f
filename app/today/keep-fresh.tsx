'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';

const A_MINUTE = 60_000;

/**
 * Reads the page anew every minute, and whenever somebody comes back to it: a bench that has closed since must not
 * stand there as open.
 */
export function KeepFresh() {
  const router = useRouter();
  useEffect(() => {
    const again = () => {
      if (document.visibilityState === 'visible') router.refresh();
    };
    const timer = setInterval(again, A_MINUTE);
    const comingBack: [EventTarget, string][] = [
      [document, 'visibilitychange'],
      [window, 'pageshow'],
      [window, 'online'],
    ];
    for (const [target, event] of comingBack) target.addEventListener(event, again);
    return () => {
      clearInterval(timer);
      for (const [target, event] of comingBack) target.removeEventListener(event, again);
    };
  }, [router]);
  return null;
}
