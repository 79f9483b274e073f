import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { allShops, type ShopAtAGlance } from '@/lib/views/all-shops';
import { FirstVisit } from '../../_parts/first-visit';
import { ShowShopButton } from '../show-shop-button';

export const metadata: Metadata = { title: 'All shops' };

/** Every shop of this database in one table, so that nobody has to switch from one to the next to see where to go first. */
export default async function ShopsPage() {
  const shops = await allShops(clock);
  if (shops.length === 0) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>All shops</h1>
      <p className="soft">As things stand now, each by its own clock. Costs are those of the 26 weeks ahead.</p>
      <div style={{ overflowX: 'auto' }}>
        <table>
          <thead>
            <tr>
              <th scope="col">Shop</th>
              <th scope="col">Keep out of</th>
              <th scope="col">To spray today</th>
              <th scope="col">To order this week</th>
              <th scope="col">Materials ahead</th>
              <th scope="col">
                <span className="soft">Show</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shops.map((shop) => (
              <ShopRow key={shop.id} shop={shop} />
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function ShopRow({ shop }: { shop: ShopAtAGlance }) {
  const { name, isDemo, clock: time, ahead } = shop;
  return (
    <tr>
      <th scope="row">
        {name}
        <br />
        <small className="soft">
          {isDemo && 'the demo shop, '}
          {time === null ? 'cannot be read' : `${time} there`}
        </small>
      </th>
      <td>{keepOutText(shop)}</td>
      <td>{ahead === null ? 'not known' : ahead.sprayToday}</td>
      <td>{ahead === null ? 'not known' : `${ahead.orderNow} of ${ahead.runOut} that run out`}</td>
      <td>{ahead === null ? 'not known' : `${ahead.unknownCosts > 0 ? 'at least ' : ''}${ahead.cost}`}</td>
      <td>
        <ShowShopButton shop={shop} />
      </td>
    </tr>
  );
}

function keepOutText({ keepOut }: ShopAtAGlance) {
  if (keepOut === null) return <b className="grave">KEEP OUT of all (not known)</b>;
  const { benches, out, unknown } = keepOut;
  if (out === 0) return `none of ${benches} benches, as recorded`;
  return (
    <b className="grave">
      {out} of {benches} benches{unknown > 0 && `, ${unknown} not known`}
    </b>
  );
}
