import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage, doorTitle } from '@/lib/door/door-page';
import type { Fig } from '@/lib/views/figures';
import { type OrderScreen, orderScreen } from '@/lib/views/orders';
import { showMoneyIfKnown } from '@/shared/measure/show';
import { showDay } from '@/shared/time/show-day';
import { ColumnHeads } from '../../../_parts/column-heads';
import { EmptyPlace } from '../../../_parts/empty-place';
import { Figure } from '../../../_parts/figure';
import { CameList } from '../came-list';
import { CloseForm } from '../close-form';
import { StateWords } from '../order-state';
import styles from '../orders.module.css';

type OrderParams = { params: Promise<{ order: string }> };

const screenOf = async ({ params }: OrderParams) => orderScreen(clock, decodeURIComponent((await params).order));

export const generateMetadata = doorTitle('grow', async (props: OrderParams) => {
  const screen = await screenOf(props);
  return screen && `Order from ${screen.order.supplier.name}`;
});

async function OrderPage(props: OrderParams) {
  const screen = await screenOf(props);
  const of = { list: 'orders' as const, id: decodeURIComponent((await props.params).order) };
  if (!screen) return <UnreadOrMissing of={of} />;
  const { order, state, came, shopId, formId, standing, today } = screen;
  const address = encodeURIComponent(order.id);
  return (
    <>
      <UnreadOf of={of} />
      <p className={styles.back}>
        <a href="/buy/orders">Orders</a>
      </p>
      <h1>
        Order from {order.supplier.name}, {showDay(order.placedOn, today)}
      </h1>
      <p>
        <StateWords state={state} />
        {order.closedOn !== null && `, since ${showDay(order.closedOn, today)}`}
      </p>
      {order.note && <p>{order.note}</p>}
      <Facts screen={screen} />
      <OrderLines screen={screen} />
      <div className={styles.tools}>
        {state.kind !== 'closed' && (
          <a className="button" data-main="" href={`/shelf/receive?order=${address}#delivery`}>
            Receive what came
          </a>
        )}
        <a className="button" href={`/buy/orders/list?order=${address}`}>
          List to send
        </a>
        <a className="button" href={`/buy/orders/${address}/edit`}>
          Change it
        </a>
        {(state.kind !== 'closed' || state.missing > 0) && (
          <CloseForm {...{ shop: shopId, id: order.id, standing, formId, isClosed: order.closedOn !== null }} />
        )}
      </div>
      <section aria-labelledby="came">
        <h2 id="came">What came</h2>
        {came.length === 0 ? (
          <EmptyPlace>Nothing of it has come yet. Once it does, what it really cost stands here.</EmptyPlace>
        ) : (
          <CameList screen={screen} />
        )}
        <p className="apart">
          <a href={`/shelf/suppliers/${encodeURIComponent(order.supplier.id)}#orders`}>
            How long {order.supplier.name} really takes
          </a>
        </p>
      </section>
    </>
  );
}

function Facts({ screen: { goods, freight, total, expectedOn, ways } }: { screen: OrderScreen }) {
  const facts: [string, Fig][] = [
    ['expected', expectedOn],
    ['goods', goods],
    ['freight', freight],
    ['in all', total],
  ];
  return (
    <dl className={styles.facts}>
      {facts.map(([name, figure]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <Figure of={figure} ways={ways} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

function OrderLines({ screen: { lines, ways } }: { screen: OrderScreen }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reachable with the keyboard.
    <section className="sideways" tabIndex={0} aria-label="What was ordered">
      <table>
        <ColumnHeads
          of={[
            'Product',
            { number: 'Packs' },
            { number: 'One at' },
            { number: 'In all' },
            { number: 'Came' },
            { number: 'To come' },
          ]}
        />
        <tbody>
          {lines.map(({ key, product, href, pack, count, price, cost, received, rest }) => (
            <tr key={key}>
              <th scope="row">
                <a href={href}>
                  {product}, {pack}
                </a>
              </th>
              <td className="number">{count}</td>
              <td className="number">{showMoneyIfKnown(price, ways.currency)}</td>
              <td className="number">
                <Figure of={cost} ways={ways} />
              </td>
              <td className="number">{received}</td>
              <td className="number">{rest}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

export default doorPage('grow', OrderPage);
