import { showStock } from '@/shared/measure/show';
import { stock } from '@/shared/quantity/amounts';
import type { PurchasePlan } from '../buying/purchase-plan';
import type { Product } from '../shop';

/** An amount of a product in a sentence of a plan, in the shop's units. Takes µL or mg. */
export const amountWords = ({ shop }: PurchasePlan, amount: number, { form }: Pick<Product, 'form'>): string =>
  showStock(stock(amount), form, shop.units);
