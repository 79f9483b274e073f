import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type Call, type EmergencyScreen, emergencyScreen, type ProductAtHand } from '@/lib/views/emergency';
import { FirstVisit } from '../_parts/first-visit';
import { PrintButton } from '../_parts/print-button';
import styles from './emergency.module.css';
import { Inventory } from './inventory';

export const metadata: Metadata = { title: 'In an emergency' };

/** Whom to call, first aid and safety data sheets, and for the fire service what stands where. */
async function EmergencyPage() {
  const screen = await emergencyScreen(clock);
  if (!screen) return <FirstVisit />;
  const { products } = screen;
  const sprayed = products.filter((product) => product.sprayed.length > 0);
  const stored = products.filter((product) => product.sprayed.length === 0);
  return (
    <>
      <h1>In an emergency</h1>
      <p className={styles.first}>
        <b>Life in danger, or a fire: call the emergency number of where you are first.</b> Have the product’s own label
        at hand; it says what to do before anything here does.
      </p>
      <Calls screen={screen} />
      <Products title="Sprayed lately" id="sprayed" products={sprayed} />
      <Products title="On the shelf" id="shelf" products={stored} />
      <Inventory screen={screen} />
      <p className={`unprinted ${styles.foot}`}>
        <PrintButton />
        <a href="/keep-out">Keep-out</a>
        <a href="/setup/shop">Whom to call is entered here</a>
      </p>
    </>
  );
}

function Calls({ screen: { poisonLine, medical, contacts, shop } }: { screen: EmergencyScreen }) {
  return (
    <dl className={styles.calls}>
      <div>
        <dt>Poison line</dt>
        <dd>
          <Caller call={poisonLine} />
        </dd>
      </div>
      <div>
        <dt>Nearest medical facility</dt>
        <dd>
          <Caller call={medical} />
        </dd>
      </div>
      {contacts.map(({ name, call }) => (
        <div key={`${name} ${call.text}`}>
          <dt>{name}</dt>
          <dd>
            <Caller call={call} />
          </dd>
        </div>
      ))}
      <div>
        <dt>You are at</dt>
        <dd>
          {shop.name}
          {shop.address ? `, ${shop.address}` : <Unentered />}
        </dd>
      </div>
    </dl>
  );
}

function Caller({ call }: { call: Call | null }) {
  if (!call) return <Unentered />;
  return call.number === null ? call.text : <a href={`tel:${call.number}`}>{call.text}</a>;
}

const Unentered = () => (
  <a className="grave" href="/setup/shop">
    {' '}
    not entered
  </a>
);

function Products({ title, id, products }: { title: string; id: string; products: ProductAtHand[] }) {
  return (
    <section aria-labelledby={id} className={styles.group}>
      <h2 id={id}>{title}</h2>
      {products.length === 0 && <p className="soft">Nothing.</p>}
      <ul className={styles.products}>
        {products.map((product) => (
          <OneProduct key={product.id} product={product} />
        ))}
      </ul>
    </section>
  );
}

function OneProduct({ product }: { product: ProductAtHand }) {
  const { id, name, signalWord, registration, actives, firstAid, sheet, sprayed } = product;
  return (
    <li>
      <h3>
        {name} {signalWord !== null && <span className={styles.signal}>{signalWord}</span>}
      </h3>
      {sprayed.length > 0 && <p>Sprayed on {sprayed.join('; ')}</p>}
      <p className="soft small">
        {registration === null ? 'no registration number entered' : `Registration ${registration}`} ·{' '}
        {actives ?? 'contents not entered'}
      </p>
      <p>
        <b>First aid: </b>
        {firstAid ?? <span className="grave">not entered. Read it on the bottle.</span>}
      </p>
      <p className={styles.sheet}>
        {sheet ? (
          <a href={sheet.href}>Safety data sheet, kept {sheet.when}</a>
        ) : (
          <a className="grave" href={`/shelf/${encodeURIComponent(id)}#sheet`}>
            No safety data sheet is kept: add it
          </a>
        )}
      </p>
    </li>
  );
}

export default doorPage('be-here', EmergencyPage);
