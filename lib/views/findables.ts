import { bottleCode } from '@/shared/codes/bottle-code';
import { showStock } from '@/shared/measure/show';
import { showDayOnPaper } from '@/shared/time/show-day';
import { lastUsableDay } from '../engine/ledger/last-usable-day';
import type { FoundBy } from '../engine/search/rank';
import type { Bench, Container, Product, Recipe, Shop } from '../engine/shop';
import { benchAnchor } from './bench-anchor';
import type { BottleAddressOf } from './bottle-addresses';

/** One thing that a search may find: what it is, where it is shown, and what is said beside its name. */
export type Findable = { of: 'product' | 'bottle' | 'bench' | 'recipe'; href: string; by: FoundBy; detail: string };

/** Everything in a shop that has a page or a place of its own. */
export const findables = (shop: Shop, addressOf: BottleAddressOf): Findable[] => [
  ...shop.products.map(productFindable),
  ...emptiesLast(shop.containers).map((container) => bottleFindable(shop, container, addressOf)),
  ...shop.benches.map(benchFindable),
  ...shop.recipes.map(recipeFindable),
];

/** Of two bottles that answer alike, the one with something in it is meant. */
const emptiesLast = (containers: Container[]): Container[] => [
  ...containers.filter(({ remaining }) => remaining > 0),
  ...containers.filter(({ remaining }) => remaining <= 0),
];

function productFindable({ id, name, kind, contents, label, gtins, archived }: Product): Findable {
  const substances = contents.map(({ substance }) => substance);
  return {
    of: 'product',
    href: `/shelf/${encodeURIComponent(id)}`,
    by: {
      name,
      codes: [id, ...(label.registration ? [label.registration] : []), ...gtins.flatMap(everyLength)],
      also: substances,
    },
    detail: [kind, ...substances, archived ? 'put away' : ''].filter(Boolean).join(' · '),
  };
}

/** A bar code's number as scanners give it: with the zeros before it, or without. */
const everyLength = (gtin: string): string[] => [gtin, gtin.replace(/^0+/, ''), gtin.padStart(14, '0')];

function bottleFindable({ units }: Shop, container: Container, addressOf: BottleAddressOf): Findable {
  const { lot, product, packText, remaining, keptIn } = container;
  const { href, lotId, number } = addressOf(container);
  const last = lastUsableDay(container);
  const left = remaining > 0 ? `${showStock(remaining, product.form, units)} left` : 'empty';
  const codes = [bottleCode({ lotId, number }), `${lotId}/${number}`, lotId, lot];
  return {
    of: 'bottle',
    href,
    by: { name: `${product.name}, ${packText}`, codes, also: keptIn === null ? [] : [keptIn] },
    detail: [
      `lot ${lotId} no. ${number}`,
      left,
      last === null ? 'no last day known' : `last day ${showDayOnPaper(last)}`,
      keptIn ?? '',
    ]
      .filter(Boolean)
      .join(' · '),
  };
}

const benchFindable = ({ id, name, plants }: Bench): Findable => ({
  of: 'bench',
  href: `/today#${benchAnchor(id)}`,
  by: { name, codes: [id], also: plants.map((group) => group.name) },
  detail: plants.map((group) => group.name).join(', ') || 'no plants',
});

const recipeFindable = ({ id, name, ingredients }: Recipe): Findable => ({
  of: 'recipe',
  href: `/mix/recipes/${encodeURIComponent(id)}`,
  by: { name, codes: [id], also: ingredients.map(({ product }) => product.name) },
  detail: ingredients.map(({ product }) => product.name).join(', ') || 'nothing in it',
});
