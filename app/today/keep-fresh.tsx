'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { clock } from '@/lib/clock';
import { ageText } from '@/shared/time/age-text';
import type { Instant } from '@/shared/time/instant';
import { showClock } from '@/shared/time/show-day';
import type { Zone } from '@/shared/time/zone';

const A_MINUTE = 60_000;
const ANSWER_MS = 8_000;

/**
 * Reads the page anew every minute, and whenever somebody comes back to it: a bench that has closed since must not
 * stand there as open. Without the shop the page stays, and says how old it is.
 *
 * Takes   the moment that the page shows
 */
export function KeepFresh({ asOf, zone }: { asOf: Instant; zone: Zone }) {
  const router = useRouter();
  const [away, setAway] = useState<number | null>(null);
  useEffect(() => {
    let isOver = false;
    const shownAt = clock.steady();
    const again = async () => {
      if (document.visibilityState !== 'visible') return;
      // Asked first: the router would leave the page for one that cannot be had.
      const isThere = await answers();
      if (isOver) return;
      setAway(isThere ? null : clock.steady() - shownAt);
      if (isThere) router.refresh();
    };
    const timer = setInterval(again, A_MINUTE);
    const comingBack: [EventTarget, string][] = [
      [document, 'visibilitychange'],
      [window, 'pageshow'],
      [window, 'online'],
    ];
    for (const [target, event] of comingBack) target.addEventListener(event, again);
    return () => {
      isOver = true;
      clearInterval(timer);
      for (const [target, event] of comingBack) target.removeEventListener(event, again);
    };
  }, [router]);
  if (away === null) return null;
  return (
    <p role="status" className="grave">
      The shop does not answer: this page is as it was at {showClock(asOf, zone)}, {ageText(away)} ago or more.
    </p>
  );
}

async function answers(): Promise<boolean> {
  try {
    const answer = await fetch('/keep-out/now', { cache: 'no-store', signal: AbortSignal.timeout(ANSWER_MS) });
    return answer.ok;
  } catch {
    return false;
  }
}
