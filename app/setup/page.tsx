import type { Metadata } from 'next';
import { canHere } from '@/lib/access/can-here';
import type { May } from '@/lib/access/may';
import { whoAsksHere } from '@/lib/access/who-asks';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type SetupScreen, setupScreen } from '@/lib/views/setup';
import { showDay } from '@/shared/time/show-day';
import { AcceptRecords } from './accept-records';
import { AcceptRows } from './accept-rows';
import { BackupsSection } from './backups-section';
import { DatabaseSection } from './database-state';
import { ImportShop } from './import-shop';
import styles from './setup.module.css';
import { ShopFacts } from './shop-facts';
import { ShowShopButton } from './show-shop-button';
import { StartShopForm } from './start-shop-form';
import { UnreadThings } from './unread-things';

export const metadata: Metadata = { title: 'Setup' };

async function SetupPage() {
  const { shops, shown, accept, acceptRecords, unread, database, backups } = await setupScreen(clock);
  const can = await canHere();
  return (
    <>
      <h1>Setup</h1>
      <p className="soft">The shop itself, the shops in this database, and shop files in and out.</p>
      <NobodySignsIn />
      {database.state === 'damaged' && <DatabaseSection database={database} />}
      {accept && <AcceptRows screen={accept} />}
      {acceptRecords && <AcceptRecords screen={acceptRecords} />}
      {shown && <UnreadThings shop={shown.id} {...unread} />}
      <div className={styles.columns}>
        <div>
          {shown?.tooMuch && (
            <p id="too-much" role="alert" className="apart">
              {shown.tooMuch} Until then only the keep-out board, the log and Setup can be shown.
            </p>
          )}
          {shown && <ShownShop shown={shown} can={can} />}
          <ShopsHere shops={shops} shown={shown?.id} />
        </div>
        {can('own') && (
          <div>
            <section aria-labelledby="import">
              <h2 id="import">Bring in a shop file</h2>
              <ImportShop shown={shown && { id: shown.id, name: shown.settings.name }} />
            </section>
            <section aria-labelledby="start">
              <h2 id="start">Start a shop of my own</h2>
              <StartShopForm />
            </section>
            <BackupsSection backups={backups} />
            {database.state !== 'damaged' && <DatabaseSection database={database} />}
          </div>
        )}
      </div>
    </>
  );
}

/** As long as nobody owns the shop: what that means, and the way out. */
async function NobodySignsIn() {
  const asker = await whoAsksHere();
  if (asker.kind !== 'unowned') return null;
  return (
    <p className={styles.open}>
      <span>Nobody signs in here yet: whoever is at this computer can see and change everything.</span>
      <a className="button" href="/sign-in/owner">
        Make an owner’s sign-in
      </a>
    </p>
  );
}

type ShopsHereProps = { shops: SetupScreen['shops']; shown: string | undefined };

const ShopsHere = ({ shops, shown }: ShopsHereProps) => (
  <section aria-labelledby="shops">
    <h2 id="shops">Shops in this database</h2>
    <ul>
      {shops.map((shop) => (
        <li key={shop.id} className={styles.shop}>
          <span>
            <b>{shop.name}</b>
            <small className="soft">
              {shop.isDemo ? 'the demo shop, ' : ''}here since {showDay(shop.createdOn)}
            </small>
          </span>
          {shop.id === shown ? <span className="soft">the shop of this device</span> : <ShowShopButton shop={shop} />}
        </li>
      ))}
    </ul>
    {shops.length > 1 && (
      <p>
        <a href="/setup/shops">All shops at a glance</a>
      </p>
    )}
  </section>
);

const LINKS: readonly [href: string, name: string, what: string, may: May][] = [
  ['/setup/people', 'Who works here', 'who signs in, what each may do, and on which devices', 'own'],
  ['/setup/shop', 'The shop itself', 'name, hours, water, days and money', 'own'],
  ['/setup/tools', 'Tools', 'sprayers and measures', 'own'],
  ['/setup/benches', 'Benches', 'what stands where, and what a plant takes', 'grow'],
  ['/mix/recipes', 'Recipes', 'what is mixed', 'see-shop'],
  ['/setup/programs', 'Programs', 'what is sprayed where, and how often', 'grow'],
  ['/setup/board', 'A board for the sales floor', 'a link that shows states and nothing else', 'own'],
  ['/setup/phones', 'Phones', 'where they reach this shop', 'own'],
  ['/setup/calendar', 'Calendar', 'sprayings and keep-out in a calendar program', 'own'],
  ['/setup/alerts', 'Alerts', 'by e-mail, to another program, and when to be quiet', 'own'],
  ['/setup/clock', 'The clock', 'what intervals are counted by', 'own'],
  ['/setup/csv', 'Lists in and out', 'products, offers and lots as CSV', 'grow'],
  ['/setup/rules', 'Where the rules come from', 'each rule with its source', 'see-shop'],
];

type ShownShopProps = { shown: NonNullable<SetupScreen['shown']>; can: (may: May) => boolean };

function ShownShop({ shown, can }: ShownShopProps) {
  return (
    <section aria-labelledby="facts">
      <h2 id="facts">{shown.settings.name}</h2>
      <ShopFacts settings={shown.settings} counts={shown.counts} />
      <nav aria-label="What can be set up here">
        <ul className={styles.links}>
          {LINKS.filter(([, , , may]) => can(may)).map(([href, name, what]) => (
            <li key={href}>
              <a href={href}>{name}</a>
              <span className="soft">{what}</span>
            </li>
          ))}
        </ul>
      </nav>
      {can('own') && (
        <p className={styles.out}>
          <a className="button" href="/api/v1/shop" download>
            Save as a shop file
          </a>
        </p>
      )}
    </section>
  );
}

export default doorPage('grow', SetupPage);
