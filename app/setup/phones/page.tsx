import type { Metadata } from 'next';
import { networkWay } from '@/lib/door/allowed-hosts';
import { doorPage } from '@/lib/door/door-page';
import { MISSING_BY_PLAIN_HTTP } from '@/lib/door/missing-by-plain-http';
import { squareCode } from '@/lib/views/square-code';
import { Square } from '../../_parts/square';
import styles from './phones.module.css';

export const metadata: Metadata = { title: 'Phones' };
export const dynamic = 'force-dynamic';

/** Where phones reach this shop, and what they need for it. */
function PhonesPage() {
  const { way, url } = networkWay();
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>Phones</h1>
      {url === null ? <OnlyHere /> : <Reached url={url} />}
      {way === 'https' && (
        <p>
          Each phone has to trust this shop once, or it warns. On the shop’s computer run{' '}
          <code>npm run certificate</code>: it shows a square code that leads to the file and the steps.
        </p>
      )}
      {way === 'plain' && (
        <section aria-labelledby="missing">
          <h2 id="missing">By plain http, as it was started</h2>
          <ul>
            {MISSING_BY_PLAIN_HTTP.map((one) => (
              <li key={one}>{one}</li>
            ))}
          </ul>
          <p>
            Start it with <code>npm start -- --network</code> instead, and all of that works.
          </p>
        </section>
      )}
    </>
  );
}

const OnlyHere = () => (
  <>
    <p>No phone reaches this shop: it answers on its own computer alone.</p>
    <p>
      Make the owner’s sign-in, then start it with <code>npm start -- --network</code>. Phones on the shop’s own network
      then reach it by https.
    </p>
  </>
);

const Reached = ({ url }: { url: string }) => (
  <>
    <p>
      Phones reach this shop at <b className={styles.address}>{url}</b>
    </p>
    <div className={styles.code}>
      <Square of={squareCode(url)} />
    </div>
  </>
);

export default doorPage('own', PhonesPage);
