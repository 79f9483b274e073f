import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import './paper.css';
import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import { clock } from '@/lib/clock';
import { enteredAs } from '@/lib/door/entered-as';
import { shopNow } from '@/lib/views/house';
import { EnteredAs } from './_parts/entered-as';
import { FindAnything } from './_parts/find-anything';
import { Hatching } from './_parts/hatching';
import { PlaceLinks } from './_parts/place-links';
import { PLACES } from './_parts/places';
import { UnsentMixes } from './_parts/unsent-mixes';
import { WorkingOpener } from './_parts/working-opener';
import styles from './layout.module.css';

export const metadata: Metadata = {
  title: { template: '%s · Bench & Bottle', default: 'Bench & Bottle' },
  description: 'Sprayings, stock, cost and closed benches of a small plant shop.',
};

export const viewport: Viewport = {
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f5f2e9' },
    { media: '(prefers-color-scheme: dark)', color: '#121a15' },
  ],
};

/** What every page stands in: the shop's name, the places, the caution. */
export default async function Layout({ children }: { children: ReactNode }) {
  const here = await shopNow(clock);
  return (
    <html lang="en">
      <body>
        <a className={styles.skip} href="#main">
          Skip to the page
        </a>
        <Hatching />
        <header className={styles.header}>
          <a className={styles.shop} href="/today">
            {here?.shop.name ?? 'Bench & Bottle'}
          </a>
          <PlaceLinks places={PLACES} />
          {here && <FindAnything />}
          {here?.isDemo && (
            <p className={styles.demo}>
              The demo shop. <a href="/setup#start">Start my own</a>
            </p>
          )}
        </header>
        {here && <UnsentMixes />}
        <main id="main" className={styles.main} tabIndex={-1}>
          {children}
        </main>
        <footer className={styles.caution}>
          <b>The label governs.</b> This page only repeats what was typed in from it. Local rules and licensed practice
          come first.
          {here && <EnteredAs who={await enteredAs()} />}
        </footer>
        {here && <WorkingOpener ways={here.ways} />}
      </body>
    </html>
  );
}
