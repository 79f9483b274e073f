import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type CodeLookup, lookUpCode } from '@/lib/views/code-lookup';
import { shopNow } from '@/lib/views/house';
import { FirstVisit } from '../../_parts/first-visit';
import { one, type Search } from '../../_parts/search';
import { OpenScanned } from './open-scanned';
import styles from './scan.module.css';

export const metadata: Metadata = { title: 'Scan' };

async function ScanPage({ searchParams }: { searchParams: Promise<Search> }) {
  const code = one((await searchParams).code) ?? '';
  if (!(await shopNow(clock))) return <FirstVisit />;
  const lookup = await lookUpCode(clock, code);
  if (lookup.kind === 'found') redirect(lookup.href);
  if (lookup.kind === 'words') redirect(searchFor(lookup.words));
  return (
    <>
      <p>
        <a href="/shelf">Shelf</a>
      </p>
      <h1>Scan</h1>
      <p className="soft">
        The square code on one of <a href="/shelf/labels">our labels</a> opens that bottle, the bar code on a pack its
        product.
      </p>
      <Answer lookup={lookup} code={code} />
      <OpenScanned />
      <form className={styles.form} action="/shelf/scan" aria-labelledby="typed">
        <h2 id="typed">Type or paste it</h2>
        <label htmlFor="code">Code, number or name</label>
        <div className={styles.line}>
          <input
            id="code"
            name="code"
            defaultValue={code}
            autoComplete="off"
            autoCapitalize="none"
            spellCheck={false}
            enterKeyHint="go"
            maxLength={300}
            aria-describedby="code-hint"
          />
          <button type="submit" data-main="">
            Open
          </button>
        </div>
        <p id="code-hint" className="soft">
          What stands under the square code, such as BB1:oil-b/1, or the 8 to 14 digits under a bar code. A hand scanner
          that types works here, too.
        </p>
      </form>
    </>
  );
}

const searchFor = (words: string): string => `/search?${new URLSearchParams({ q: words })}`;

function Answer({ lookup, code }: { lookup: CodeLookup; code: string }) {
  if (lookup.kind === 'unknown-gtin') {
    return (
      <div role="alert" className={styles.answer}>
        <p>
          No product here has the bar code <b>{lookup.gtin}</b> yet.
        </p>
        <p>
          <a href={lookup.href}>Enter a new product with it</a>, or open the product it belongs to and add it there.
        </p>
      </div>
    );
  }
  if (lookup.kind !== 'told') return null;
  return (
    <div role="alert" className={styles.answer}>
      <p>{lookup.message}</p>
      <p>
        <a href={searchFor(code)}>Search for it</a> instead.
      </p>
    </div>
  );
}

export default doorPage('see-shop', ScanPage);
