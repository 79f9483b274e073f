'use client';

import { useEffect, useState } from 'react';
import { clock } from '@/lib/clock';
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
  // What sends a mix is loaded late. A device that mixes needs it without a network, too.
  if (isKept || keptKeys().length > 0) await import('./unsent-list').catch(() => {});
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
    const look = () => setAge(Math.max(0, clock.now() - keptAt));
    look();
    const timer = setInterval(look, 30_000);
    return () => clearInterval(timer);
  }, []);
  return age;
}

/** What this page is made of: what it has loaded, and what it names. */
function filesOfPage(): string[] {
  const loaded = performance.getEntriesByType('resource').map(({ name }) => name);
  const named = [...document.querySelectorAll<HTMLScriptElement | HTMLLinkElement>('script[src], link[href]')].map(
    (one) => ('src' in one ? one.src : one.href),
  );
  return [...new Set([...loaded, ...named])].filter((file) => new URL(file).pathname.startsWith('/_next/static/'));
}
