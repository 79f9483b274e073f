import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { lookUpCode } from '@/lib/views/code-lookup';
import { shopNow } from '@/lib/views/house';
import { searchScreen } from '@/lib/views/search';
import type { FoundGroup } from '@/shared/api/search';
import { LONGEST_SEARCH } from '@/shared/codes/longest-search';
import { FirstVisit } from '../_parts/first-visit';
import { FoundGroups } from '../_parts/found-groups';
import { OneKeysSwitch } from '../_parts/one-keys-switch';
import { one, type Search } from '../_parts/search';
import styles from './search.module.css';

export const metadata: Metadata = { title: 'Find anything' };

async function SearchPage({ searchParams }: { searchParams: Promise<Search> }) {
  const q = (one((await searchParams).q) ?? '').slice(0, LONGEST_SEARCH).trim();
  if (!(await shopNow(clock))) return <FirstVisit />;
  const lookup = await lookUpCode(clock, q);
  if (lookup.kind === 'found') redirect(lookup.href);
  const outcome = await searchScreen(q);
  const groups = outcome.ok ? outcome.value.groups : [];
  return (
    <>
      <h1>Find anything</h1>
      <search>
        <form className={styles.line} action="/search">
          <label className="spoken" htmlFor="q">
            Product, bottle, bench, recipe or code
          </label>
          <input
            id="q"
            name="q"
            type="search"
            placeholder="Product, bottle, bench, recipe or code"
            defaultValue={q}
            autoComplete="off"
            autoCapitalize="none"
            spellCheck={false}
            maxLength={LONGEST_SEARCH}
          />
          <button type="submit" data-main="">
            Find
          </button>
        </form>
      </search>
      {lookup.kind === 'told' && <p className="grave">{lookup.message}</p>}
      {lookup.kind === 'unknown-gtin' && (
        <p>
          No product here has the bar code {lookup.gtin} yet. <a href={lookup.href}>Enter a new product with it</a>.
        </p>
      )}
      <p role="status" className="soft">
        {q === '' ? HINT : countWords(groups, q)}
      </p>
      <div className={styles.found}>
        <FoundGroups groups={groups} />
      </div>
      <OneKeysSwitch />
    </>
  );
}

const HINT =
  'A product by its name, substance, registration or bar code; a bottle by its lot, its place or what its label says; a bench; a recipe.';

function countWords(groups: FoundGroup[], q: string): string {
  const count = groups.reduce((sum, { found, more }) => sum + found.length + more, 0);
  if (count === 0) return `Nothing is called “${q}”, carries that code or has that in it. Try a part of the word.`;
  return `${count} found for “${q}”`;
}

export default doorPage('see-shop', SearchPage);
