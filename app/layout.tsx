import './paper.css';
import type { Metadata, Viewport } from 'next';
import { unstable_rethrow } from 'next/navigation';
import type { ReactNode } from 'react';
import type { Asker } from '@/lib/access/asker';
import { canHere } from '@/lib/access/can-here';
import { whoAsksHere } from '@/lib/access/who-asks';
import { clock } from '@/lib/clock';
import { standsAlone } from '@/lib/door/alone-page';
import { buildName } from '@/lib/door/build-name';
import { enteredAs } from '@/lib/door/entered-as';
import { type HereNow, shopNow } from '@/lib/views/house';
import { type ShopsAndShown, shopsAndShown } from '@/lib/views/shown-shop';
import { ROLE_WORDS } from '@/shared/access/roles';
import { EnteredAs } from './_parts/entered-as';
import { FindAnything } from './_parts/find-anything';
import { Hatching } from './_parts/hatching';
import { KeepOffline } from './_parts/keep-offline';
import { PlaceLinks } from './_parts/place-links';
import { placesFor } from './_parts/places';
import { RememberShop } from './_parts/remember-shop';
import { SignedInAs } from './_parts/signed-in-as';
import { TypedEarly } from './_parts/typed-early';
import { TypedEarlyNotes } from './_parts/typed-early-notes';
import { typeface } from './_parts/typeface';
import { UnsentMixes } from './_parts/unsent-mixes';
import { WhichShop } from './_parts/which-shop';
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

/**
 * What every page stands in: the shop's name, the places, the caution. What a secret link shows stands by itself, and so
 * does all that a stranger sees.
 */
export default async function Layout({ children }: { children: ReactNode }) {
  const asker = await whoAsksHere();
  const isAlone = asker.kind === 'stranger' || (await standsAlone());
  const [device, here] = isAlone ? [null, null] : [await readable(shopsAndShown()), await readable(shopNow(clock))];
  return (
    <html lang="en" className={typeface}>
      <body>
        {isAlone ? (
          <Alone name={asker.kind === 'stranger'}>{children}</Alone>
        ) : (
          <Framed {...{ here, device, asker }}>{children}</Framed>
        )}
      </body>
    </html>
  );
}

/** A page that cannot be made without the shop says so itself; the keep-out board can, and must stand in something. */
async function readable<T>(reading: Promise<T>): Promise<T | null> {
  try {
    return await reading;
  } catch (error) {
    unstable_rethrow(error);
    return null;
  }
}

/** A page by itself. A stranger is told only what the program is called. */
const Alone = ({ name, children }: { name: boolean; children: ReactNode }) => (
  <main id="main" className={styles.main} tabIndex={-1}>
    {name && <p className={styles.shop}>Bench & Bottle</p>}
    {children}
  </main>
);

/** Who is signed in, and as what in the shop that is shown. */
function signedIn({ person }: Extract<Asker, { kind: 'person' }>, shop: string | undefined) {
  const role = shop === undefined ? undefined : person.roles.get(shop);
  return { name: person.name, role: role === undefined ? null : ROLE_WORDS[role].name.toLowerCase() };
}

type FramedProps = { here: HereNow | null; device: ShopsAndShown | null; asker: Asker; children: ReactNode };

async function Framed({ here, device, asker, children }: FramedProps) {
  const can = await canHere();
  return (
    <>
      <TypedEarlyNotes />
      <a className={styles.skip} href="#main">
        Skip to the page
      </a>
      <Hatching />
      <header className={styles.header}>
        <a className={styles.shop} href={can('see-shop') ? '/today' : '/'}>
          {here?.shop.name ?? 'Bench & Bottle'}
        </a>
        <PlaceLinks places={placesFor(can)} />
        {here && can('see-shop') && <FindAnything />}
        {here?.isDemo && (
          <p className={styles.demo}>
            The demo shop. <a href="/setup#start">Start my own</a>
          </p>
        )}
      </header>
      {here && can('spray') && <UnsentMixes />}
      <main id="main" className={styles.main} tabIndex={-1}>
        {device?.isAsked ? <WhichShop shops={device.shops} /> : children}
      </main>
      {device?.remember && <RememberShop shop={device.remember} />}
      <footer className={styles.caution}>
        <b>The label governs.</b> This page only repeats what was typed in from it. Local rules and licensed practice
        come first.
        {asker.kind === 'person' && <SignedInAs {...signedIn(asker, here?.id)} />}
        {asker.kind === 'unowned' && here && <EnteredAs who={await enteredAs()} />}
      </footer>
      {here && <WorkingOpener ways={here.ways} />}
      <TypedEarly />
      <KeepOffline build={buildName()} shop={here?.id ?? null} />
    </>
  );
}
