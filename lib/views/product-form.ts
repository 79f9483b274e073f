import 'server-only';
import { formOfProduct } from '@/shared/forms/product-fields';
import { type Unknown, unknownsOf } from '@/shared/forms/product-unknowns';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Clock } from '../clock';
import { shopHere } from '../data/shops';
import { shopFileOf } from '../data/snapshot';
import { shopNow } from './house';
import { openedThing, type ThingOpened } from './thing-form';

export type ProductFormScreen = {
  thing: ThingOpened;
  /** The name that the product has now; empty for a new one. */
  name: string;
  /** The fields as they stand; none of a new one. */
  fields: Record<string, string>;
};

/**
 * The form of a product, as it stands.
 *
 * Takes    the id, or null for a new one
 * Gives    null when there is no shop, or no such product in it
 */
export async function productFormScreen(clock: Clock, id: string | null): Promise<ProductFormScreen | null> {
  const here = await shopNow(clock);
  const product = here?.file.products.find((one) => one.id === id) ?? null;
  if (!here || (id !== null && !product)) return null;
  const fields = product ? formOfProduct(product, here.file.shop.units) : {};
  return { thing: openedThing(here.id, product), name: product?.name ?? '', fields };
}

export type ProductTools = { thing: ThingOpened; form: 'liquid' | 'powder'; archived: boolean; unknowns: Unknown[] };

/** What can be done with a product by hand, and what of it nobody entered yet. */
export async function productTools(clock: Clock, id: string): Promise<ProductTools | null> {
  const here = await shopNow(clock);
  const product = here?.file.products.find((one) => one.id === id);
  if (!here || !product) return null;
  const { form, archived } = product;
  return {
    thing: openedThing(here.id, product),
    form,
    archived,
    unknowns: unknownsOf(formOfProduct(product, here.file.shop.units)),
  };
}

/** The shop that a form was opened for, whichever is looked at now, as its file. Null when it is no longer there. */
export async function shopOfForm(shopId: string): Promise<ShopFile | null> {
  return (await shopHere(shopId)) ? shopFileOf(shopId) : null;
}
