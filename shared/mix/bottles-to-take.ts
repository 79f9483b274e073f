import { showNumber } from '../measure/show';
import { stock } from '../quantity/amounts';
import { bottleKey, type PlanBottle, type PlanProduct, productIn } from './mix-plan';
import type { MixProgress } from './mix-progress';
import { plannedPour, productsOf } from './mix-screens';
import { bottlesToUse, partsOf } from './poured-so-far';

export type BottleToTake = { product: PlanProduct; bottle: PlanBottle; takeText: string };

/** The bottles that a mix takes from, as things stand, in the order of the pours; last, the one for the acid. */
export function bottlesToTake(progress: MixProgress): BottleToTake[] {
  const { plan } = progress;
  const poured = productsOf(progress).flatMap((product) => takenFrom(progress, product));
  const [acid] = plan.acids;
  const bottle = acid && bottlesToUse(progress, acid.product)[0];
  if (!acid || !bottle || poured.some((one) => bottleKey(one.bottle) === bottleKey(bottle))) return poured;
  return [...poured, { product: productIn(plan, acid.product), bottle, takeText: 'for the pH' }];
}

function takenFrom(progress: MixProgress, product: string): BottleToTake[] {
  const its = productIn(progress.plan, product);
  const perFill = plannedPour(progress, product)?.perFill ?? null;
  if (perFill === null || perFill === 0) {
    const first = bottlesToUse(progress, product)[0];
    return first ? [{ product: its, bottle: first, takeText: 'how much is not known' }] : [];
  }
  const amount = stock(perFill * progress.plan.fills);
  return partsOf({ ...progress, pours: [] }, { fill: -1, product, amount }).flatMap(
    ({ bottle: spot, amount: text }) => {
      const bottle = spot && its.bottles.find((one) => bottleKey(one) === bottleKey(spot));
      return bottle ? [{ product: its, bottle, takeText: text }] : [];
    },
  );
}

/** "40 mL" of a bottle's contents for people, in mL or g whatever the amount. */
export const leftText = ({ left }: PlanBottle, { form }: PlanProduct): string =>
  `${showNumber(left / 1000)} ${form === 'liquid' ? 'mL' : 'g'}`;
