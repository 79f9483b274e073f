import 'server-only';
import type { z } from 'zod';
import type { FoundGroup, SearchAnswer, SearchQuestion } from '@/shared/api/search';
import { accept, type Outcome } from '@/shared/outcome';
import { shopOf } from '../data/snapshot';
import { findIn, isBeside, isExact } from '../engine/search/rank';
import { askedShop } from './asked-shop';
import { bottleAddresses } from './bottle-addresses';
import { type Findable, findables } from './findables';

/** How many of each kind fit a list that one chooses from with the arrow keys. */
const MOST_IN_A_LIST = 6;

/** What of a shop answers a text, for the list that opens anywhere. */
export const searchAnswer = ({ q, shop }: z.output<typeof SearchQuestion>): Promise<Outcome<SearchAnswer>> =>
  searchIn(shop, q, MOST_IN_A_LIST);

/** The same for the page of its own, which has more room. */
export const searchScreen = (q: string): Promise<Outcome<SearchAnswer>> => searchIn(undefined, q, MOST_ON_A_PAGE);

const MOST_ON_A_PAGE = 100;

async function searchIn(shopId: string | undefined, q: string, most: number): Promise<Outcome<SearchAnswer>> {
  const asked = await askedShop(shopId);
  if (!asked.ok) return asked;
  if (q.trim() === '') return accept({ q, groups: [] });
  const { id } = asked.value;
  const shop = await shopOf(id);
  const things = findables(shop, await bottleAddresses(id));
  return accept({ q, groups: grouped(things, q, most) });
}

const KINDS = ['product', 'bottle', 'bench', 'recipe'] as const;

/** By what they are: first what was meant exactly, then what answers by its name or code, last by what is beside it. */
function grouped(things: Findable[], q: string, most: number): FoundGroup[] {
  const found = findIn(things, q, ({ by }) => by);
  return KINDS.map((of) => found.filter(({ thing }) => thing.of === of))
    .filter((group) => group.length > 0)
    .sort((a, b) => tierOf(a[0]?.rank ?? 0) - tierOf(b[0]?.rank ?? 0))
    .map((group) => ({
      of: group[0]?.thing.of ?? 'product',
      found: group.slice(0, most).map(({ thing: { href, by, detail } }) => ({ href, name: by.name, detail })),
      more: Math.max(0, group.length - most),
    }));
}

const tierOf = (rank: number): number => (isExact(rank) ? 0 : isBeside(rank) ? 2 : 1);
