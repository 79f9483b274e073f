import type { Metadata } from 'next';
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
  return (
    <>
      <h1>Setup</h1>
      <p className="soft">The shop itself, the shops in this database, and shop files in and out.</p>
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
          {shown && <ShownShop shown={shown} />}
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
                  {shop.id === shown?.id ? (
                    <span className="soft">the shop of this device</span>
                  ) : (
                    <ShowShopButton shop={shop} />
                  )}
                </li>
              ))}
            </ul>
            {shops.length > 1 && (
              <p>
                <a href="/setup/shops">All shops at a glance</a>
              </p>
            )}
          </section>
        </div>
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
      </div>
    </>
  );
}

const LINKS = [
  ['/setup/shop', 'The shop itself', 'name, hours, water, days and money'],
  ['/setup/tools', 'Tools', 'sprayers and measures'],
  ['/setup/benches', 'Benches', 'what stands where, and what a plant takes'],
  ['/mix/recipes', 'Recipes', 'what is mixed'],
  ['/setup/programs', 'Programs', 'what is sprayed where, and how often'],
  ['/setup/board', 'A board for the sales floor', 'a link that shows states and nothing else'],
  ['/setup/phones', 'Phones', 'where they reach this shop'],
  ['/setup/calendar', 'Calendar', 'sprayings and keep-out in a calendar program'],
  ['/setup/alerts', 'Alerts', 'by e-mail, to another program, and when to be quiet'],
  ['/setup/clock', 'The clock', 'what intervals are counted by'],
  ['/setup/csv', 'Lists in and out', 'products, offers and lots as CSV'],
  ['/setup/rules', 'Where the rules come from', 'each rule with its source'],
] as const;

function ShownShop({ shown }: { shown: NonNullable<SetupScreen['shown']> }) {
  return (
    <section aria-labelledby="facts">
      <h2 id="facts">{shown.settings.name}</h2>
      <ShopFacts settings={shown.settings} counts={shown.counts} />
      <nav aria-label="What can be set up here">
        <ul className={styles.links}>
          {LINKS.map(([href, name, what]) => (
            <li key={href}>
              <a href={href}>{name}</a>
              <span className="soft">{what}</span>
            </li>
          ))}
        </ul>
      </nav>
      <p className={styles.out}>
        <a className="button" href="/api/v1/shop" download>
          Save as a shop file
        </a>
      </p>
    </section>
  );
}

export default doorPage('grow', SetupPage);
