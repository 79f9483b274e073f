import type { Metadata } from 'next';
import { judged } from '@/lib/access/asker';
import { whoAsksHere } from '@/lib/access/who-asks';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { allShops, type ShopAtAGlance } from '@/lib/views/all-shops';
import { shopsAndShown } from '@/lib/views/shown-shop';
import facts from '../../_parts/facts.module.css';
import { FirstVisit } from '../../_parts/first-visit';
import { ShowShopButton } from '../show-shop-button';

export const metadata: Metadata = { title: 'All shops' };

/** Every shop of this database on one page, so that nobody has to switch from one to the next to see where to go first. */
async function ShopsPage() {
  const asker = await whoAsksHere();
  const theirs = (await shopsAndShown()).shops.filter(({ id }) => judged(asker, 'see-shop', [id]) === null);
  const shops = await allShops(theirs, clock);
  if (shops.length === 0) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>All shops</h1>
      <p className="soft">As things stand now, each by its own clock.</p>
      {shops.map((shop) => (
        <OneShop key={shop.id} shop={shop} />
      ))}
    </>
  );
}

function OneShop({ shop }: { shop: ShopAtAGlance }) {
  const { id, name, isDemo, clock: time, ahead } = shop;
  return (
    <section aria-labelledby={`shop-${id}`}>
      <h2 id={`shop-${id}`}>{name}</h2>
      <p className="soft">
        {isDemo && 'The demo shop. '}
        {time === null ? 'It cannot be read.' : `It is ${time} there.`}
      </p>
      <dl className={facts.facts}>
        <div>
          <dt>Keep out of</dt>
          <dd>{keepOutText(shop)}</dd>
        </div>
        <div>
          <dt>To spray today</dt>
          <dd>{ahead === null ? 'not known' : ahead.sprayToday}</dd>
        </div>
        <div>
          <dt>To order this week</dt>
          <dd>{ahead === null ? 'not known' : `${ahead.orderNow} of ${ahead.runOut} products that run out`}</dd>
        </div>
        <div>
          <dt>Materials, 26 weeks</dt>
          <dd>{ahead === null ? 'not known' : `${ahead.unknownCosts > 0 ? 'at least ' : ''}${ahead.cost}`}</dd>
        </div>
      </dl>
      <ShowShopButton shop={shop} />
    </section>
  );
}

function keepOutText({ keepOut }: ShopAtAGlance) {
  if (keepOut === null) return <b className="grave">every bench (not known)</b>;
  const { benches, out, unknown } = keepOut;
  if (out === 0) return `none of ${benches} benches, as recorded`;
  return (
    <b className="grave">
      {out} of {benches} benches{unknown > 0 && `, ${unknown} of them not known`}
    </b>
  );
}

export default doorPage('see-shop', ShopsPage);
