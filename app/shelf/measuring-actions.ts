'use server';

import { revalidatePath } from 'next/cache';
import { clock } from '@/lib/clock';
import { changeShop } from '@/lib/commands/change-shop';
import { doorAction } from '@/lib/door/door-action';
import { shopOfForm } from '@/lib/views/product-form';
import type { FormState } from '@/shared/forms/form-state';
import { MeasureDrop, readingName, WeighSpoon } from '@/shared/forms/measuring';
import { portionsOf, repeatedReading } from '@/shared/measure/repeated-reading';
import { showNumber } from '@/shared/measure/show';
import { accept, type Outcome, type Refusal, refuse } from '@/shared/outcome';

type Readings = { readings: string[]; pieces: number; way: 'each' | 'total' };

/** What one spoon or drop is, or the fault beside the reading that nobody can read. */
function meanOf({ readings, pieces, way }: Readings): Outcome<number> {
  const portions = portionsOf(readings, pieces, way);
  if (!portions.ok) return beside(portions.at, portions.message);
  if (portions.value.length === 0) return beside(0, 'Nothing is read yet. Write what the scale or the syringe shows.');
  return accept(repeatedReading(portions.value).mean);
}

const beside = (at: number, message: string): Outcome<never> =>
  refuse({ code: 'faults', faults: [{ path: readingName(at), message }] });

/** What the shop says against the result stands beside the first reading. */
function besideReadings(refusal: Refusal): Outcome<never> {
  if (refusal.code !== 'faults') return refuse(refusal);
  const [first] = refusal.faults;
  return beside(0, first?.message ?? '');
}

const keepSpoon = doorAction(
  { may: 'spray', form: WeighSpoon },
  async ({ commandId, shop, id, standing, ...read }, { actor }) => {
    const product = (await shopOfForm(shop))?.products.find((one) => one.id === id);
    if (!product) return refuse({ code: 'not-found', what: 'product', id });
    const mean = meanOf(read);
    if (!mean.ok) return mean;
    const part = { products: [{ ...product, gramsPerTeaspoon: mean.value }] };
    const expecting = [{ list: 'products' as const, id, fingerprint: standing }];
    const outcome = await changeShop({ commandId, shopId: shop, actor, part, expecting }, clock);
    if (!outcome.ok) return besideReadings(outcome.refusal);
    revalidatePath('/', 'layout');
    return accept({ message: `${showNumber(mean.value)} g in a level teaspoon is kept.` });
  },
);

/** Keep what a level teaspoon of a powder weighs. */
export async function keepSpoonAction(state: FormState, form: FormData): Promise<FormState> {
  return keepSpoon(state, form);
}

const keepDrop = doorAction(
  { may: 'spray', form: MeasureDrop },
  async ({ commandId, shop, pieces, way, readings }, { actor }) => {
    const mean = meanOf({ readings, pieces, way });
    if (!mean.ok) return mean;
    const outcome = await changeShop({ commandId, shopId: shop, actor, part: { shop: { dropMl: mean.value } } }, clock);
    if (!outcome.ok) return besideReadings(outcome.refusal);
    revalidatePath('/', 'layout');
    return accept({ message: `A drop counts as ${showNumber(mean.value)} mL from now on.` });
  },
);

/** Keep what a drop of the shop's own dropper is. */
export async function keepDropAction(state: FormState, form: FormData): Promise<FormState> {
  return keepDrop(state, form);
}
