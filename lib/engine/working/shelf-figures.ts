import type { Plan, ProductAhead } from '../ahead/plan';
import { inDrawOrder } from '../ledger/draw-order';
import { eachOnce, type ToEnter, toEnterForPrice } from '../rules/to-enter';
import type { Container } from '../shop';
import { valueLeft } from './container-figures';
import { bottleName } from './line-figures';
import { count, type FoundWorking, figureAddress, money, type Step, sumShown, worked } from './shown';

const NEVER_ENTERED = 'What was paid for it was never entered, so it is not in the sum.';

const NEVER_PAID = 'What was paid was never entered.';

const toEnterIn = (unpaid: readonly Container[]): ToEnter[] => eachOnce(unpaid.map(toEnterForPrice));

/** The working of a sum over the shelf at what was paid: `shelf/value`, `shelf/unknownValues` or `shelf/wasteCost`. */
export function shelfValueWorking(plan: Plan, [figure]: string[]): FoundWorking | null {
  switch (figure) {
    case 'value':
      return shelfValue(plan);
    case 'unknownValues':
      return unknownValues(plan);
    case 'wasteCost':
      return shelfWaste(plan);
    default:
      return null;
  }
}

/** The containers that have come and have something in them, of one product or of all. */
export const standingNow = (
  { shop, today }: Pick<Plan, 'shop' | 'today'>,
  product?: ProductAhead['product'],
): Container[] =>
  shop.containers.filter(
    (one) => one.remaining > 0 && one.receivedOn <= today && (product === undefined || one.product === product),
  );

/** The working of what a product on the shelf was paid with: `product/ID/value`. */
export function productValueWorking(plan: Plan, { product }: Pick<ProductAhead, 'product'>): FoundWorking {
  const standing = inDrawOrder(standingNow(plan, product));
  return {
    title: `Value of ${product.name} on the shelf`,
    value: sumShown(standing.map(valueLeft), NEVER_PAID),
    rule: 'What is left in every bottle that has come, at what was paid for it, also in those past their last day. What was never entered is not in the sum.',
    steps: standing.map(valueStep),
    get toEnter() {
      return toEnterIn(standing.filter((one) => valueLeft(one) === null));
    },
  };
}

function shelfValue(plan: Plan): FoundWorking {
  const products = plan.products.filter(({ product }) => standingNow(plan, product).length > 0);
  const unknown = unknownValues(plan).value;
  return {
    title: 'Stock value on the shelf',
    value: sumShown(standingNow(plan).map(valueLeft), NEVER_PAID),
    rule: 'What is left in every bottle that has come, at what was paid for it, added up by product. Freight is not in it. What was never entered is not in the sum.',
    steps: [
      ...products.map((ahead) =>
        worked(
          ahead.product.name,
          productValueWorking(plan, ahead).value,
          'its bottles',
          figureAddress('product', ahead.product.id, 'value'),
        ),
      ),
      worked('Not known, and not in the sum', unknown, 'bottles', figureAddress('shelf', 'unknownValues')),
    ],
    get toEnter() {
      return toEnterIn(standingNow(plan).filter((one) => valueLeft(one) === null));
    },
  };
}

function unknownValues(plan: Plan): FoundWorking {
  const unknown = inDrawOrder(standingNow(plan)).filter((one) => valueLeft(one) === null);
  return {
    title: 'Bottles whose value is not known',
    value: count(unknown.length, 'bottles'),
    rule: 'Bottles with something in them for which nobody entered what was paid.',
    steps: unknown.map(valueStep),
    get toEnter() {
      return toEnterIn(unknown);
    },
  };
}

function shelfWaste({ products, weeks }: Plan): FoundWorking {
  const wastes = products.flatMap((ahead) => ahead.wastes).filter(({ amount }) => amount > 0);
  return {
    title: `Value about to be wasted in ${weeks} weeks`,
    value: sumShown(
      wastes.map(({ cost }) => cost),
      NEVER_PAID,
    ),
    get toEnter() {
      return toEnterIn(wastes.filter(({ cost }) => cost === null).map(({ container }) => container));
    },
    rule: 'What is left in bottles after their last usable day, at what was paid for it, if nothing but the programs uses it. What was never entered is not in the sum.',
    steps: wastes.map(({ container, cost }) =>
      worked(
        bottleName(container),
        money(cost, NEVER_ENTERED),
        'left after its last usable day',
        figureAddress('container', container.lot, container.place, 'wasteCost'),
      ),
    ),
  };
}

const valueStep = (container: Container): Step =>
  worked(
    bottleName(container),
    money(valueLeft(container), NEVER_ENTERED),
    'its share of what was paid',
    figureAddress('container', container.lot, container.place, 'value'),
  );
