import type { Dose } from '@/shared/measure/dose';
import { showMoney, showStock } from '@/shared/measure/show';
import { sum } from '@/shared/quantity/amounts';
import { type Exact, toNumber } from '@/shared/quantity/exact';
import { showDay } from '@/shared/time/show-day';
import { cheapestOffer } from '../ahead/cheapest-offer';
import type { Draw, IngredientLine, Plan, Spraying } from '../ahead/plan';
import { allBy } from '../looked-up';
import { toEnterForAmount, toEnterForCost } from '../rules/to-enter';
import type { Container, Offer, Product, Shop } from '../shop';
import { ratePerMl, stockPerSquareMetre } from '../strength/dose-in-stock';
import { entered, type FoundWorking, figureAddress, money, type Shown, type Step, worked } from './shown';

/** The working of one ingredient line of a spraying: `N/amount`, `N/used`, `N/short`, `N/shortCost` or `N/cost`. */
export function lineWorking(plan: Plan, spraying: Spraying, [number, figure]: string[]): FoundWorking | null {
  const line = spraying.lines[Number(number)];
  if (!line) return null;
  if (figure === 'amount') return amountWorking(spraying, line);
  if (figure === 'used' || figure === 'short') return metWorking(spraying, line, Number(number), figure);
  if (figure === 'shortCost') return shortCostWorking(plan, spraying, line, Number(number));
  if (figure === 'cost') return costWorking(plan, spraying, line, Number(number));
  return null;
}

const WEIGH = 'Density, grams per level teaspoon or strength is missing, so the dose cannot be turned into an amount.';
const NO_GROUND = 'The area of a bench is missing, and the dose is per area.';

/** A line's amount with its unit, or why it is unknown. */
const amountShown = (line: IngredientLine): Shown =>
  line.amount === null
    ? { kind: 'unknown', because: whyUnknown(line) }
    : { kind: 'stock', amount: line.amount, form: line.ingredient.product.form };

const whyUnknown = ({ ingredient: { dose, product } }: IngredientLine): string =>
  dose.kind === 'perArea' && stockPerSquareMetre(dose, product) ? NO_GROUND : WEIGH;

function amountWorking(spraying: Spraying, line: IngredientLine): FoundWorking {
  const { product, dose } = line.ingredient;
  const perArea = dose.kind === 'perArea';
  const rate = perArea ? stockPerSquareMetre(dose, product) : ratePerMl(dose, product);
  return {
    title: `${product.name} in the batch`,
    value: amountShown(line),
    toEnter: toEnterForAmount(spraying, line),
    rule: `Dose × ${perArea ? 'area of the benches, whatever the spray' : 'spray to mix'}, rounded once to the ${product.form === 'liquid' ? 'µL' : 'mg'}.`,
    steps: [
      entered(`Dose: ${dose.text}`, rateShown(rate, line.ingredient), `recipe ${spraying.recipe.name}`),
      ...measureSteps(product, dose),
      ...(perArea ? groundSteps(spraying) : [sprayStep(spraying)]),
      ...supposedSteps(line),
    ],
  };
}

/** A use that somebody supposes is so much of what the dose takes, rounded once more. */
const supposedSteps = ({ supposedPercent }: IngredientLine): Step[] =>
  supposedPercent === undefined
    ? []
    : [entered('Of that', { kind: 'ratio', value: supposedPercent, unit: '%' }, 'the use that is supposed')];

function rateShown(rate: Exact | null, { dose, product }: IngredientLine['ingredient']): Shown {
  if (!rate) return { kind: 'unknown', because: WEIGH };
  const unit = product.form === 'liquid' ? 'mL' : 'g';
  // The rate on a square metre is in µL or mg.
  if (dose.kind === 'perArea') return { kind: 'ratio', value: toNumber(rate) / 1000, unit: `${unit} a m²` };
  return { kind: 'ratio', value: toNumber(rate), unit: `${unit} a litre of spray` };
}

const groundSteps = ({ program }: Spraying): Step[] =>
  program.benches.map(({ name, area }) => entered(name, ratio(area && toNumber(area), 'm²'), `bench ${name}`));

function sprayStep({ spray, program, date }: Spraying): Step {
  const value: Shown = spray
    ? { kind: 'volume', ml: toNumber(spray.total) }
    : { kind: 'unknown', because: 'mL per plant' };
  return worked('Spray to mix', value, 'benches and sprayer', figureAddress('spraying', program.id, date, 'sprayMl'));
}

/** What turned a dose by mass of a liquid, or by volume of a powder, into the product's own unit. */
function measureSteps(product: Product, dose: Dose): Step[] {
  const measure = dose.kind === 'perArea' ? dose.measure : dose.kind;
  if (product.form === 'liquid' && measure === 'mass') {
    return [entered('Density', ratio(product.densityGPerMl, 'g a mL'), `product ${product.name}`)];
  }
  if (product.form === 'powder' && measure === 'volume') {
    return [entered('One level teaspoon', ratio(product.gramsPerTeaspoon, 'g'), `product ${product.name}, as weighed`)];
  }
  if (measure !== 'substance') return [];
  return product.contents.map(({ substance, amount, basis }) =>
    entered(substance, { kind: 'ratio', value: amount, unit: basis }, `label of ${product.name}`),
  );
}

const ratio = (value: number | null, unit: string): Shown =>
  value === null ? { kind: 'unknown', because: 'Never entered.' } : { kind: 'ratio', value, unit };

/** How much of a line's amount the shelf gives, and how much it does not. */
function metWorking(spraying: Spraying, line: IngredientLine, number: number, figure: 'used' | 'short'): FoundWorking {
  const { product } = line.ingredient;
  const taken = sum(line.draws.map(({ amount }) => amount));
  const address = figureAddress('spraying', spraying.program.id, spraying.date, 'line', number, 'amount');
  return {
    title: `${product.name} ${figure === 'used' ? 'from the shelf' : 'missing'} in the batch`,
    value:
      line.amount === null
        ? amountShown(line)
        : { kind: 'stock', amount: figure === 'used' ? taken : line.short, form: product.form },
    rule: 'A batch takes what usable bottles hold on its day, those that die first before others. The rest of its amount is short.',
    steps: [
      worked('Amount', amountShown(line), `recipe ${spraying.recipe.name}`, address),
      ...line.draws.map(({ container, amount }) =>
        entered(bottleName(container), { kind: 'stock', amount, form: product.form }, 'drawn from it'),
      ),
    ],
  };
}

/** What a line costs, or which of the things that it takes to know is missing. */
export function lineCostShown(line: IngredientLine): Shown {
  const { amount, draws, cost } = line;
  if (cost !== null) return { kind: 'money', micros: cost };
  if (amount === null) return { kind: 'unknown', because: whyUnknown(line) };
  const unpriced = draws.some((draw) => draw.cost === null);
  return { kind: 'unknown', because: unpriced ? 'What was paid for one of the bottles was never entered.' : NO_OFFER };
}

const NO_OFFER = 'Not on the shelf, and no supplier offers it.';

function costWorking(plan: Plan, spraying: Spraying, line: IngredientLine, number: number): FoundWorking {
  const { product } = line.ingredient;
  const address = figureAddress('spraying', spraying.program.id, spraying.date, 'line', number, 'amount');
  return {
    title: `Cost of ${product.name} in the batch`,
    value: lineCostShown(line),
    toEnter: toEnterForCost(spraying, line),
    rule: 'Drawn from the bottles that die first. A draw costs the bottle’s price × what is out of it after ÷ its size, less the same before, each rounded to a millionth, so that all draws of a bottle add up to its price. What is short costs the cheapest offer per unit.',
    steps: [
      worked('Amount', amountShown(line), `recipe ${spraying.recipe.name}`, address),
      ...line.draws.map((draw) => drawStep(plan.shop, draw)),
      ...shortSteps(plan.shop, line),
    ],
  };
}

/** A bottle in words: its pack and the day it came. */
export const bottleName = ({ packText, receivedOn, product }: Container): string =>
  `${product.name}, ${packText}, received ${showDay(receivedOn)}`;

/** What one bottle gives, and what that costs. */
export function drawStep(shop: Shop, { container, amount, before, after, cost }: Draw): Step {
  const show = (part: typeof amount) => showStock(part, container.product.form, shop.units);
  const price = container.paid === null ? 'a price never entered' : showMoney(container.paid, shop.currency);
  return worked(
    bottleName(container),
    money(cost, 'What was paid for this bottle was never entered.'),
    `${show(amount)} of ${show(container.size)} that cost ${price}; out of it ${show(before)} before, ${show(after)} after`,
    figureAddress('container', container.lot, container.place, 'remaining'),
  );
}

/** A price that somebody supposes is not the one that is asked. */
export const supposedWords = ({ supposedPercent }: Offer): string =>
  supposedPercent === undefined ? '' : `, as supposed: ${supposedPercent} % of the price`;

/** What buying the part of a line that no bottle gives would cost. */
function shortCostWorking({ shop }: Plan, spraying: Spraying, line: IngredientLine, number: number): FoundWorking {
  const { product } = line.ingredient;
  const address = figureAddress('spraying', spraying.program.id, spraying.date, 'line', number, 'short');
  const offer = cheapestOfferOf(shop, product);
  return {
    title: `To buy of ${product.name} for the batch`,
    value: money(line.shortCost, line.amount === null ? whyUnknown(line) : NO_OFFER),
    rule: 'What is missing × the price of the cheapest offer per unit, as if a pack could be divided. Without freight.',
    steps: [
      worked('Missing', { kind: 'stock', amount: line.short, form: product.form }, 'the shelf', address),
      ...(offer
        ? [
            entered(
              `A pack of ${offer.packText}`,
              money(offer.price, ''),
              `${offer.supplier.name}${supposedWords(offer)}`,
            ),
          ]
        : []),
    ],
  };
}

const cheapestOfferOf = ({ offers }: Shop, product: Product): Offer | null =>
  cheapestOffer([...offersOf(offers, product)]);

const offersOf = allBy((offer: Offer) => offer.product);

/** What no bottle gives, and what it would cost to buy; nothing when nothing is short. */
export function shortSteps(shop: Shop, line: IngredientLine): Step[] {
  if (line.short === 0) return [];
  const { product } = line.ingredient;
  const offer = cheapestOfferOf(shop, product);
  const from = offer
    ? `not on the shelf; ${offer.supplier.name} sells ${offer.packText} at ${showMoney(offer.price, shop.currency)}${supposedWords(offer)}`
    : 'not on the shelf, and no offer to buy it';
  return [
    entered('Short', { kind: 'stock', amount: line.short, form: product.form }, 'no usable bottle is left'),
    entered('To buy that', money(line.shortCost, NO_OFFER), from),
  ];
}
