import 'server-only';
import { addDays, type Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import type { Clock } from '../clock';
import { countingApplications } from '../engine/keepout/counting';
import { reopensAfter } from '../engine/keepout/reopening';
import { asItIs } from '../engine/mix/sprayed-product';
import type { Application, Product } from '../engine/shop';
import { withSources } from '../engine/strength/sources';
import { amountStored, type Stored, storedAddress, storedNow } from '../engine/working/store-figures';
import type { Fig } from './figures';
import { type HereNow, shopNow } from './house';
import { inAnyYear } from './record-facts';
import { type SheetShown, sheetByProduct } from './safety-sheet';

/** Somebody to call: a text with a number in it, and the number alone where there is one. */
export type Call = { text: string; number: string | null };

/** One product, as whoever helps wants to know it. */
export type ProductAtHand = {
  id: string;
  name: string;
  signalWord: string | null;
  registration: string | null;
  actives: string | null;
  firstAid: string | null;
  sheet: SheetShown | null;
  /** Where and when it was sprayed lately; empty for what only stands in the store. */
  sprayed: string[];
};

type StoreLine = {
  product: string;
  signalWord: string | null;
  containers: number;
  amount: Fig;
  storage: string | null;
};

export type EmergencyScreen = Pick<HereNow, 'ways'> & {
  shop: { name: string; address: string | null };
  poisonLine: Call | null;
  medical: Call | null;
  contacts: { name: string; call: Call }[];
  products: ProductAtHand[];
  store: { place: string | null; lines: StoreLine[] }[];
  asOf: string;
};

/** What counts as sprayed lately: in two weeks, and longer while a bench is kept out of for it. */
const LATELY_DAYS = 14;

/**
 * What is wanted when somebody is hurt or something burns: whom to call, the first aid and the safety data sheet of what
 * was sprayed lately and of everything on the shelf, and what stands where. Null when there is no shop.
 */
export async function emergencyScreen(clock: Clock): Promise<EmergencyScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { shop, today, ways, now } = here;
  const { emergency, name, address, zone } = shop;
  const stored = storedNow({ shop, today });
  return {
    ...{ ways, shop: { name, address }, asOf: inAnyYear(now, zone) },
    poisonLine: emergency.poisonLine === null ? null : callOf(emergency.poisonLine),
    medical: emergency.medical === null ? null : callOf(emergency.medical),
    contacts: emergency.contacts.map(({ name: whom, phone }) => ({ name: whom, call: callOf(phone) })),
    products: await productsAtHand(here, stored),
    store: storeOf(stored),
  };
}

/** The last run of digits that is long enough to be called. */
function callOf(text: string): Call {
  const runs = text.match(/\+?\d[\d\s().-]*\d/g) ?? [];
  const number = runs.map((run) => run.replace(/[^\d+]/g, '')).findLast((digits) => digits.length >= 3);
  return { text, number: number ?? null };
}

async function productsAtHand({ id, shop, now, today }: HereNow, store: readonly Stored[]): Promise<ProductAtHand[]> {
  const sheets = await sheetByProduct(id, shop.zone);
  const lately = countingApplications(shop)
    .filter((record) => isLately(record, now, today, shop.zone))
    .sort((a, b) => b.startedAt - a.startedAt);
  const sprayed = new Map<Product, string[]>();
  for (const record of lately) {
    const where = `${record.benches.map((bench) => bench.name).join(', ')}, ${showDay(dayOf(shop.zone, record.startedAt), today)}`;
    for (const product of record.recipe.ingredients.flatMap((one) => withSources(one.product))) {
      sprayed.set(product, [...(sprayed.get(product) ?? []), where]);
    }
  }
  const stored = new Set(store.flatMap(({ product }) => withSources(product)));
  const rest = shop.products.filter((product) => stored.has(product) && !sprayed.has(product));
  return [...sprayed.keys(), ...rest].map((product) => ({
    ...{ id: product.id, ...asItIs(product), sprayed: sprayed.get(product) ?? [] },
    signalWord: product.label.signalWord,
    firstAid: product.label.firstAid,
    sheet: sheets.get(product.id) ?? null,
  }));
}

function isLately(record: Application, now: number, today: Day, zone: HereNow['ways']['zone']): boolean {
  const reopensAt = reopensAfter(record);
  return dayOf(zone, record.startedAt) >= addDays(today, -LATELY_DAYS) || reopensAt === null || reopensAt > now;
}

function storeOf(store: readonly Stored[]): EmergencyScreen['store'] {
  const places = new Map<string | null, StoreLine[]>();
  for (const stored of store) {
    const { place, product, containers } = stored;
    const { signalWord, storage } = product.label;
    const value = { kind: 'stock', amount: amountStored(stored), form: product.form } as const;
    const amount = { at: storedAddress(stored), value };
    const line = { product: product.name, signalWord, storage, containers: containers.length, amount };
    places.set(place, [...(places.get(place) ?? []), line]);
  }
  return [...places].map(([place, lines]) => ({ place, lines }));
}
