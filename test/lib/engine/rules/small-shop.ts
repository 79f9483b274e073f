import type { Plan } from '@/lib/engine/ahead/plan';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { parseShopFile } from '@/shared/shop-file/parse';
import { type Day, readDay } from '@/shared/time/day';

export type Fields = { [field: string]: unknown };

/** What a small shop is made of, as a shop file writes it. Whatever is left out is as in an ordinary small shop. */
export type SmallShop = {
  settings?: Fields;
  suppliers?: Fields[];
  products?: Fields[];
  offers?: Fields[];
  lots?: Fields[];
  benches?: Fields[];
  recipes?: Fields[];
  programs?: Fields[];
  applications?: Fields[];
};

export const day = (text: string): Day => {
  const reading = readDay(text);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
};

export const product = (id: string, label: Fields = {}, rest: Fields = {}): Fields => ({
  id,
  name: `Product ${id}`,
  kind: 'insecticide',
  form: 'liquid',
  label: { rates: [], reiHours: 0, ...label },
  shelfLife: { unopenedDays: 3650 },
  ...rest,
});

export const bench = (id: string, rest: Fields = {}): Fields => ({
  id,
  name: `Bench ${id}`,
  customers: false,
  plants: [{ name: 'ferns', count: 10, mlPerPlant: 20 }],
  ...rest,
});

/** A recipe of products by id, all at one dose unless it says otherwise. */
export const recipe = (id: string, ...ingredients: (string | Fields)[]): Fields => ({
  id,
  name: `Recipe ${id}`,
  ingredients: ingredients.map((one) => (typeof one === 'string' ? { product: one, dose: '2 mL/L' } : one)),
});

/** A program that sprays once. */
export const once = (id: string, on: string, rest: Fields = {}): Fields => ({
  id,
  recipes: ['r1'],
  benches: ['b1'],
  startsOn: on,
  startTime: '18:00',
  minutes: 30,
  ...rest,
});

export const application = (id: string, startedAt: string, endedAt: string | null, rest: Fields = {}): Fields => ({
  id,
  recipe: 'r1',
  benches: ['b1'],
  startedAt,
  endedAt,
  ...rest,
});

/** One product, one bench and one recipe of them, unless told otherwise; the zone is UTC, and plenty is on the shelf. */
export function smallShop(parts: SmallShop): Shop {
  const products = parts.products ?? [product('p1')];
  const text = JSON.stringify({
    format: 'bench-and-bottle/shop@1',
    shop: {
      name: 'Small shop',
      timeZone: 'UTC',
      currency: 'USD',
      units: 'metric',
      fillCapacity: '10 L',
      ...parts.settings,
    },
    suppliers: parts.suppliers ?? [],
    products,
    offers: parts.offers ?? [],
    lots: parts.lots ?? products.map(({ id, form }) => plenty(String(id), form === 'powder')),
    benches: parts.benches ?? [bench('b1')],
    recipes: parts.recipes ?? [recipe('r1', 'p1')],
    programs: parts.programs ?? [],
    applications: parts.applications ?? [],
  });
  const parsed = parseShopFile(text);
  if (!parsed.ok) throw new Error(parsed.faults.map(({ path, message }) => `${path}: ${message}`).join('\n'));
  return shopOfFile(parsed.file);
}

const plenty = (id: string, powder: boolean): Fields => ({
  id: `lot of ${id}`,
  product: id,
  pack: powder ? '500 kg' : '500 L',
  paid: '100.00',
  receivedOn: '2026-01-01',
});

/** What lies ahead of a small shop from Monday 2 March 2026 on. */
export const planOf = (parts: SmallShop, today = '2026-03-02', weeks = 2): Plan =>
  planAhead(smallShop(parts), day(today), weeks);
