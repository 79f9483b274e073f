import type { ShopFile } from '@/shared/shop-file/contract';
import { minutesUp } from '@/shared/time/hours';
import { asItIs } from '../mix/sprayed-product';

type FileApplication = ShopFile['applications'][number];

/**
 * A record with what it does not say yet of the products in it, as their labels have it today: what they are called,
 * registered and made of, and their interval. What was recorded stays.
 */
export function asTheLabelsSay(record: FileApplication, { products }: Pick<ShopFile, 'products'>): FileApplication {
  const known = new Map(products.map((product) => [product.id, product]));
  return {
    ...record,
    products: record.products.map((line) => {
      const product = known.get(line.product);
      if (!product) return line;
      const today = asItIs(product);
      const { reiHours } = product.label;
      return {
        ...line,
        name: line.name ?? today.name,
        registration: line.registration ?? today.registration,
        actives: line.actives ?? today.actives,
        reiMinutes: line.reiMinutes ?? (reiHours === null ? null : minutesUp(reiHours)),
      };
    }),
  };
}
