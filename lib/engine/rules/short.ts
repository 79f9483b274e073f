import { type Stock, stock, sum } from '@/shared/quantity/amounts';
import { daysBetween } from '@/shared/time/day';
import type { IngredientLine, ProductAhead, Spraying } from '../ahead/plan';
import type { Product } from '../shop';
import type { Flag } from './flag';
import { amountOf, counted, dayNear } from './in-words';
import { flagSpraying } from './raise';
import type { Unflagged } from './unflagged';

/**
 * Not enough usable stock for a spraying.
 *
 * Looks at  what the containers on the shelf can still give each line on its date, after all earlier sprayings
 * Fires     when a line cannot be met in full; once for a spraying and product
 * Severity  stop
 * Cleared   by ordering: the message names the day the product runs out and the last day to order
 */
export function short(plan: Unflagged): Flag[] {
  const ahead = new Map(plan.products.map((product) => [product.product, product]));
  const flags: Flag[] = [];
  for (const spraying of plan.sprayings) {
    const lines = spraying.lines.filter((line) => line.short > 0);
    for (const product of new Set(lines.map(({ ingredient }) => ingredient.product))) {
      const about = { rule: 'short', severity: 'stop', benches: spraying.program.benches, product } as const;
      flags.push(flagSpraying(spraying, about, () => messageFor(plan, spraying, product, ahead.get(product))));
    }
  }
  return flags;
}

function messageFor(plan: Unflagged, spraying: Spraying, product: Product, ahead: ProductAhead | undefined): string {
  const lines = spraying.lines.filter(({ ingredient }) => ingredient.product === product);
  const [needed, missing] = [total(lines, ({ amount }) => amount), total(lines, (line) => line.short)];
  const fact = `${amountOf(plan, missing, product)} of ${product.name} is missing for this: it takes ${amountOf(plan, needed, product)}.`;
  const runsOut = ahead?.runsOutOn ? ` The shelf runs out on ${dayNear(plan, ahead.runsOutOn)}.` : '';
  return `${fact}${runsOut} ${orderInWords(plan, product, ahead)}`;
}

const total = (lines: IngredientLine[], of: (line: IngredientLine) => Stock | null): Stock =>
  sum(lines.map((line) => of(line) ?? stock(0)));

function orderInWords(plan: Unflagged, product: Product, ahead: ProductAhead | undefined): string {
  const reorder = ahead?.reorder;
  if (!reorder) return `Order more; enter an offer for ${product.name} with its lead time to see by when.`;
  const { by, offer } = reorder;
  const what = `${offer.packText} from ${offer.supplier.name}`;
  const late = daysBetween(by, plan.today);
  if (late <= 0) return `Order by ${dayNear(plan, by)}, such as ${what}.`;
  return `It had to be ordered by ${dayNear(plan, by)}, ${counted(late, 'day')} ago: order today, such as ${what}, and move this if it comes too late.`;
}
