'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { makeStockSolution } from '@/lib/commands/make-stock-solution';
import { doorAction } from '@/lib/door/door-action';
import { bottleAddressOf } from '@/lib/views/bottle-address';
import { shopOfForm } from '@/lib/views/product-form';
import type { FormState } from '@/shared/forms/form-state';
import { StockSolutionForm } from '@/shared/forms/stock-solution';
import { readStock } from '@/shared/measure/read-stock';
import { accept, type Fault, refuse } from '@/shared/outcome';

const make = doorAction({ may: 'spray', form: StockSolutionForm }, async ({ shop, takes, ...asked }, { actor }) => {
  const product = (await shopOfForm(shop))?.products.find(({ id }) => id === asked.product);
  if (!product) return refuse({ code: 'not-found', what: 'product', id: asked.product });
  const faults: Fault[] = [];
  const from = takes.flatMap(({ field, lotId, place, text }) => {
    const amount = readStock(text, product);
    if (amount.ok) return [{ lotId, place, amount: amount.value }];
    faults.push({ path: field, message: amount.message });
    return [];
  });
  if (faults.length > 0) return refuse({ code: 'faults', faults });
  const outcome = await makeStockSolution({ ...asked, from, shopId: shop, actor }, clock);
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  const message = `The stock solution is on the shelf: ${asked.makeUpTo.text}. Write its name and the day on the bottle.`;
  return accept({ message, link: (await bottleAddressOf(outcome.value.lot, 0)) ?? undefined });
});

/** Make a stock solution. */
export async function makeStockSolutionAction(state: FormState, form: FormData): Promise<FormState> {
  return make(state, form);
}
