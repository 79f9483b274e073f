import 'server-only';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Clock } from '../clock';
import { fingerprint } from '../data/fingerprint';
import type { Offer, Supplier } from '../engine/shop';
import { type HereNow, houseNow, shopNow } from './house';
import { type LeadSeen, leadSeen } from './learned-from-orders';
import { type OfferShown, offersShown } from './offers-shown';
import { type OrderListed, ordersFrom } from './orders';

type FileSupplier = ShopFile['suppliers'][number];

export type SupplierListed = { supplier: Supplier; offers: number };

export type SuppliersScreen = Pick<HereNow, 'ways'> & { suppliers: SupplierListed[]; putAway: SupplierListed[] };

/** Who sells to the shop, and how many packs of theirs can be bought; apart, who was put away. */
export async function suppliersScreen(clock: Clock): Promise<SuppliersScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { shop, ways } = here;
  const all = shop.suppliers
    .map((supplier) => ({ supplier, offers: countOffers(shop.offers, supplier) }))
    .sort((a, b) => a.supplier.name.localeCompare(b.supplier.name));
  return {
    ways,
    suppliers: all.filter(({ supplier }) => !supplier.archived),
    putAway: all.filter(({ supplier }) => supplier.archived),
  };
}

/** Those that can be bought; of a supplier who was put away, those that could be before. */
const countOffers = (offers: Offer[], supplier: Supplier): number =>
  offers.filter((offer) => offer.supplier === supplier && (supplier.archived || !offer.archived)).length;

/** What a form about a supplier needs: the shop it is for, how the supplier stands, which ids and names are there. */
export type SupplierFormScreen = Pick<HereNow, 'ways'> & {
  shopId: string;
  supplier: FileSupplier | null;
  /** Empty for a new one. */
  expecting: string;
  taken: string[];
  offers: OfferShown[];
  orders: OrderListed[];
  lead: LeadSeen | null;
};

/** One supplier to be looked at and changed, or (null) a new one. Null when there is no such supplier, or no shop. */
export async function supplierScreen(clock: Clock, id: string | null): Promise<SupplierFormScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { file, shop, ways } = house;
  const supplier = file.suppliers.find((one) => one.id === id) ?? null;
  if (id !== null && !supplier) return null;
  return {
    ways,
    shopId: house.id,
    supplier,
    expecting: supplier ? fingerprint(supplier) : '',
    taken: file.suppliers.map((one) => one.id),
    offers: offersShown(
      house,
      shop.offers.filter((offer) => offer.supplier.id === id),
    ),
    orders: id === null ? [] : ordersFrom(house, id),
    lead: id === null ? null : leadSeen(house, id),
  };
}
