import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { Written } from '@/shared/shop-file/contract';
import type { Clock } from '../clock';
import { fingerprint } from '../data/fingerprint';
import { newCommandId } from '../data/new-id';
import { plainMoney } from '../engine/exchange/plain-text';
import { leadLearned } from '../engine/orders/lead-learned';
import { type Came, cameOf, levelReached, packsOrdered, saysNewPrice } from '../engine/orders/paid-otherwise';
import type { Offer } from '../engine/shop';
import { shopOfFile } from '../engine/shop-of-file';
import type { Fig } from './figures';
import { goodsOf } from './goods';
import type { House } from './house';

/** Offers as they would stand, and how they stood when that was decided. */
type Taken<T> = T & { expecting: { list: 'offers'; id: string; fingerprint: string }[]; message: string };

/**
 * An offer with what was paid for packs of an order as its price, from the day they came. It is the price of a quantity
 * break where so many were ordered that one held.
 *
 * Refuses  'not-found' when nothing like that came, or it says nothing new
 */
export async function priceToTake(
  clock: Clock,
  shopId: string,
  asked: { order: string; offer: string; line: number; cameOn: string },
): Promise<Outcome<Taken<{ offer: Written<'offers'> }>>> {
  const goods = await goodsOf(clock, shopId);
  const shop = goods && shopOfFile(goods.file);
  const order = shop?.orders.find(({ id }) => id === asked.order);
  const isAsked = ({ offer, line, cameOn }: Came) =>
    offer.id === asked.offer && line === asked.line && cameOn === asked.cameOn;
  const came = shop && order && cameOf(order, shop).find(isAsked);
  const written = goods?.file.offers.find(({ id }) => id === asked.offer);
  const ordered = order && came ? packsOrdered(order, came.offer) : 0;
  if (!came || !written || came.paidEach === null || !saysNewPrice(came, ordered)) {
    return refuse({ code: 'not-found', what: 'new price of', id: asked.offer });
  }
  const [price, level] = [plainMoney(came.paidEach), levelReached(came.offer, ordered)];
  const breaks = written.breaks.map((one) => (one.atLeast === level ? { ...one, price } : one));
  const offer = { ...written, earlier: undefined, since: came.cameOn, breaks, ...(level === null ? { price } : {}) };
  const message = `${written.pack} is ${price}${level === null ? '' : ` from ${level} packs on`} since ${came.cameOn}.`;
  return accept({ offer, expecting: [{ list: 'offers', id: written.id, fingerprint: fingerprint(written) }], message });
}

/**
 * The offers of a supplier with the lead time that its orders really took.
 *
 * Refuses  'not-found' when nothing of any of its orders has come
 */
export async function leadToTake(
  clock: Clock,
  shopId: string,
  supplierId: string,
  which: 'median' | 'worst',
): Promise<Outcome<Taken<{ offers: Written<'offers'>[] }>>> {
  const goods = await goodsOf(clock, shopId);
  const shop = goods && shopOfFile(goods.file);
  const supplier = shop?.suppliers.find(({ id }) => id === supplierId);
  const learned = shop && supplier && leadLearned(shop, supplier);
  if (!goods || !learned) return refuse({ code: 'not-found', what: 'delivery from', id: supplierId });
  const days = learned[which];
  const its = goods.file.offers.filter((offer) => offer.supplier === supplierId && !offer.archived);
  const others = its.filter(({ leadDays }) => leadDays !== days);
  return accept({
    offers: others.map((offer) => ({ ...offer, leadDays: days })),
    expecting: others.map((offer) => ({ list: 'offers', id: offer.id, fingerprint: fingerprint(offer) })),
    message: `${others.length} ${others.length === 1 ? 'offer takes' : 'offers take'} ${days} working days now.`,
  });
}

/** How long a supplier really takes, beside what its offers say. */
export type LeadSeen = {
  /** The id of the command that takes it, for a browser that runs no scripts. */
  formId: string;
  deliveries: number;
  median: Fig;
  worst: Fig;
  days: { median: number; worst: number };
  /** The lead times that its offers have, each once; null where one has none. */
  set: (number | null)[];
};

/** Null when nothing of any of its orders has come. */
export function leadSeen({ shop, figure }: House, supplierId: string): LeadSeen | null {
  const supplier = shop.suppliers.find(({ id }) => id === supplierId);
  const learned = supplier && leadLearned(shop, supplier);
  if (!learned) return null;
  const its = shop.offers.filter(({ supplier: one, archived }: Offer) => one === supplier && !archived);
  return {
    formId: newCommandId(),
    deliveries: learned.deliveries.length,
    median: figure('supplier', supplierId, 'median'),
    worst: figure('supplier', supplierId, 'worst'),
    days: { median: learned.median, worst: learned.worst },
    set: [...new Set(its.map(({ leadDays }) => leadDays))].sort((a, b) => (a ?? -1) - (b ?? -1)),
  };
}
