import { showDay } from '@/shared/time/show-day';
import type { Projection } from '../ahead/plan';
import { useUp as swapsIn, type UsedOn, type UseUp } from '../equivalents/stand-ins';
import { count, entered, type FoundWorking, figureAddress, money, type Shown, type Step, worked } from './shown';

const found = new WeakMap<Projection, UseUp[]>();

/** What about to die could be used up elsewhere, worked out once for a projection. */
export function usedUpIn(projection: Projection): UseUp[] {
  const known = found.get(projection) ?? swapsIn(projection);
  found.set(projection, known);
  return known;
}

/** The address of a figure of one such swap: `amount`, `sprayings` or `saves`. */
const swapAddress = ({ waste: { container }, recipe, wanted }: UseUp, figure: string): string =>
  figureAddress('use-up', container.lot, container.place, recipe.id, wanted.ingredient.product.id, figure);

/** The working of a figure of a swap that uses up what would die: `LOT/PLACE/RECIPE/PRODUCT/FIGURE`. */
export function swapWorking(projection: Projection, path: string[]): FoundWorking | null {
  const [figure = ''] = path.slice(4);
  const address = figureAddress('use-up', ...path);
  const swap = usedUpIn(projection).find((one) => swapAddress(one, figure) === address);
  switch (swap && figure) {
    case 'amount':
      return swap ? amountWorking(projection, swap) : null;
    case 'sprayings':
      return swap ? sprayingsWorking(projection, swap) : null;
    case 'saves':
      return swap ? savesWorking(projection, swap) : null;
    default:
      return null;
  }
}

const nameOf = ({ waste, recipe }: UseUp): string => `${waste.container.product.name} in ${recipe.name}`;

const usedSteps = ({ today }: Projection, { used, waste }: UseUp, of: (one: UsedOn) => Step['value']): Step[] =>
  used.map((one) => entered(showDay(one.on, today), of(one), `${waste.container.product.name} would be sprayed`));

function amountWorking(projection: Projection, swap: UseUp): FoundWorking {
  const { waste, amount } = swap;
  const { lot, place, product } = waste.container;
  const stock = (of: UsedOn['used']): Shown => ({ kind: 'stock', amount: of, form: product.form });
  return {
    title: `Used up of ${nameOf(swap)}`,
    value: stock(amount),
    rule: `What each spraying before ${showDay(waste.on, projection.today)} takes of it at the equal dose, as long as what would die lasts.`,
    steps: [
      worked('Would die', stock(waste.amount), 'the bottle', figureAddress('container', lot, place, 'wasted')),
      ...usedSteps(projection, swap, ({ used }) => stock(used)),
    ],
  };
}

const sprayingsWorking = (projection: Projection, swap: UseUp): FoundWorking => ({
  title: `Sprayings with ${nameOf(swap)}`,
  value: count(swap.used.length, 'sprayings'),
  rule: `The sprayings of the recipe before ${showDay(swap.waste.on, projection.today)} that something of what would die is left for.`,
  steps: usedSteps(projection, swap, ({ used }) => ({
    kind: 'stock',
    amount: used,
    form: swap.waste.container.product.form,
  })),
});

function savesWorking({ today }: Projection, swap: UseUp): FoundWorking {
  const { wanted, used, saves, offer, spared } = swap;
  const { product } = wanted.ingredient;
  return {
    title: `What ${nameOf(swap)} saves of ${product.name}`,
    value: money(saves, 'No supplier offers it.'),
    rule: `What of ${product.name} need not be bought then × the price of its cheapest offer by the unit. Without freight, and as if a pack could be divided.`,
    steps: [
      ...used.map(({ on, instead }) =>
        entered(showDay(on, today), { kind: 'stock', amount: instead, form: product.form }, 'need not be sprayed'),
      ),
      entered('In all', { kind: 'stock', amount: spared, form: product.form }, 'not to be bought'),
      ...(offer
        ? [entered('One pack', { kind: 'money', micros: offer.price }, `${offer.packText}, ${offer.supplier.name}`)]
        : []),
    ],
  };
}
