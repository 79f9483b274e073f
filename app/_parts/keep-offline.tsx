'use client';

import { useEffect, useState } from 'react';
import { ageText } from '@/shared/time/age-text';
import styles from './keep-offline.module.css';
import { keptKeys } from './kept-keys';

/** Pages that are kept as they are, for when there is no network. */
const KEPT = ['/mix/do', '/mix/sheet', '/emergency'];

type KeepOfflineProps = { build: string | null; shop: string | null };

/**
 * Lets this device keep the mix that is begun on it, its sheet and the emergency page, where the browser can. Each build
 * has a keeper of its own, which throws away what the one before kept.
 */
export function KeepOffline({ build, shop }: KeepOfflineProps) {
  const age = useKeptAge();
  useEffect(() => {
    if (build === null || shop === null || !navigator.serviceWorker) return;
    // Without it pages need the network, as everywhere else.
    keep(build, shop).catch(() => {});
  }, [build, shop]);
  if (age === null) return null;
  return (
    <p role="status" className={styles.kept}>
      No network: this page is as it was {ageText(age)} ago.
    </p>
  );
}

async function keep(build: string, shop: string): Promise<void> {
  const { pathname, search } = location;
  const isKept = KEPT.includes(pathname);
  // What sends a mix and what tells the time are loaded late. A device that mixes needs both without a network, too.
  if (isKept || keptKeys().length > 0) await Promise.all([import('./unsent-list'), loadClock()]).catch(() => {});
  await navigator.serviceWorker.register(`/sw.js?build=${encodeURIComponent(build)}`);
  const { active } = await navigator.serviceWorker.ready;
  active?.postMessage({ shop, page: isKept ? `${pathname}${search}` : null, files: filesOfPage() });
}

/** How old this page is, in milliseconds, where it comes out of what the device keeps; null where the shop made it now. */
function useKeptAge(): number | null {
  const [age, setAge] = useState<number | null>(null);
  useEffect(() => {
    const keptAt = Number(document.documentElement.dataset.kept ?? Number.NaN);
    if (!Number.isFinite(keptAt)) return;
    return everyHalfMinute((now) => setAge(Math.max(0, now - keptAt)));
  }, []);
  return age;
}

/**
 * Tells the time now and each half minute, until what it gives is called. The clock brings the calendar library with it,
 * which most pages do without, so it is loaded late.
 */
function everyHalfMinute(tell: (now: number) => void): () => void {
  let timer: ReturnType<typeof setInterval> | undefined;
  let isOver = false;
  const start = async () => {
    const { clock } = await loadClock();
    if (isOver) return;
    tell(clock.now());
    timer = setInterval(() => tell(clock.now()), 30_000);
  };
  // A page that cannot load the clock does not say how old it is, and works as it did.
  start().catch(() => {});
  return () => {
    isOver = true;
    clearInterval(timer);
  };
}

const loadClock = () => import('@/lib/clock');

/** What this page is made of: what it has loaded, and what it names. */
function filesOfPage(): string[] {
  const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
  const named = [...document.querySelectorAll<HTMLScriptElement | HTMLLinkElement>('script[src], link[href]')].map(
    (one) => ('src' in one ? one.src : one.href),
  );
  return [...new Set([...loaded, ...named])].filter((file) => new URL(file).pathname.startsWith('/_next/static/'));
}
