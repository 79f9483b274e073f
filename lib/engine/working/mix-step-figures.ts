import { showNumber } from '@/shared/measure/show';
import { type Exact, toNumber } from '@/shared/quantity/exact';
import type { Draw } from '../ahead/plan';
import type { AskedMix } from '../mix/asked-mix';
import { groundFor } from '../mix/dry-run';
import { measuredWith, TOLERANCE } from '../mix/measuring';
import type { MixStep } from '../mix/mix-step';
import type { Product } from '../shop';
import { ratePerMl } from '../strength/dose-in-stock';
import { drawStep, lineCostShown, shortSteps } from './line-figures';
import { mixAddress, volume } from './mix-address';
import { offerLineWorking } from './mix-cost-figures';
import { count, entered, type FoundWorking, type Shown, text, worked } from './shown';

/**
 * The working of one pour of a mix: `N/perFill`, `N/amount`, `N/measured`, `N/error`, `N/cost`, `N/take/M`,
 * `N/shortCost` or `N/offerCost`, with the pours counted from 0 in the order in which they go in.
 */
export function stepWorking(mix: AskedMix, [number, figure, which]: string[]): FoundWorking | null {
  const step = mix.sheet.steps[Number(number)];
  if (!step) return null;
  switch (figure) {
    case 'perFill':
      return perFillWorking(mix, step, Number(number));
    case 'amount':
      return amountWorking(mix, step);
    case 'measured':
    case 'error':
      return measuredWorking(mix, step, Number(number), figure);
    case 'cost':
      return costWorking(mix, step, Number(number));
    case 'shortCost':
      return shortWorking(mix, step);
    case 'offerCost':
      return offerLineWorking(mix, Number(number));
    case 'take':
      return takeWorking(mix, step, Number(number), step.line.draws[Number(which)]);
    default:
      return null;
  }
}

/** An amount as it is poured: mL or g, however large or small. */
const poured = (amount: Exact | number, { form }: Pick<Product, 'form'>): Shown => ({
  kind: 'ratio',
  value: (typeof amount === 'number' ? amount : toNumber(amount)) / STOCK_PER_UNIT,
  unit: unitOf(form),
});

/** A thousand µL or mg to the mL or g. */
const STOCK_PER_UNIT = 1000;

export const unitOf = (form: Product['form']): 'mL' | 'g' => (form === 'liquid' ? 'mL' : 'g');

const unknown = (because: string): Shown => ({ kind: 'unknown', because });

const perFillShown = ({ perFill, missing, ingredient }: MixStep): Shown =>
  perFill ? poured(perFill, ingredient.product) : unknown(missing ?? '');

const amountShown = ({ line: { amount }, missing, ingredient }: MixStep): Shown =>
  amount === null ? unknown(missing ?? '') : poured(amount, ingredient.product);

function perFillWorking(mix: AskedMix, step: MixStep, number: number): FoundWorking {
  const { fills } = mix.batch.spray;
  return {
    title: `${step.ingredient.product.name} in each fill`,
    value: perFillShown(step),
    rule: 'What the whole batch takes ÷ fills, exactly. What can be measured of it stands beside it.',
    steps: [
      worked('In the batch', amountShown(step), 'dose × spray', mixAddress(mix, 'step', number, 'amount')),
      worked('Fills', count(fills, 'fills'), mix.sprayer.name, mixAddress(mix, 'fills')),
    ],
  };
}

function amountWorking(mix: AskedMix, step: MixStep): FoundWorking {
  const { product, dose } = step.ingredient;
  const { batch, recipe } = mix;
  const rate = ratePerMl(dose, product, groundFor(batch));
  const each: Shown = rate
    ? { kind: 'ratio', value: toNumber(rate), unit: `${unitOf(product.form)} a litre of spray` }
    : unknown(step.missing ?? '');
  const perArea = dose.kind === 'perArea';
  const ground: Shown = batch.area
    ? { kind: 'ratio', value: toNumber(batch.area), unit: 'm²' }
    : unknown('Nobody measured the ground.');
  return {
    title: `${product.name} in the batch`,
    value: amountShown(step),
    rule: `Dose × ${perArea ? 'ground that is sprayed, whatever the spray' : 'spray to mix'}, rounded once to the ${product.form === 'liquid' ? 'µL' : 'mg'}.`,
    steps: [
      entered(`Dose: ${dose.text}`, each, `recipe ${recipe.name}`),
      ...(perArea ? [entered('Ground', ground, 'the benches')] : []),
      worked('Spray to mix', volume(batch.spray.total), 'benches and sprayer', mixAddress(mix, 'sprayMl')),
    ],
  };
}

function measuredWorking(
  mix: AskedMix,
  step: MixStep,
  number: number,
  figure: 'measured' | 'error',
): FoundWorking | null {
  const { measured, ingredient } = step;
  if (!measured) return null;
  const { product } = ingredient;
  const percent: Shown = { kind: 'ratio', value: toNumber(measured.error) * 100, unit: '%' };
  const perFill = mixAddress(mix, 'step', number, 'perFill');
  const allowed = showNumber(toNumber(TOLERANCE) * 100);
  return {
    title: figure === 'error' ? `How far off ${product.name} is measured` : `${product.name} as it can be measured`,
    value: figure === 'error' ? percent : poured(measured.amount, product),
    rule:
      figure === 'error'
        ? `(Measured − wanted) ÷ wanted. Above nothing, too much goes in. More than ${allowed} %, either way, is flagged.`
        : 'The mark, of all that the shop measures with, that takes the fewest fillings within 5 %, the tool’s own reading error included, and does not go over the label. A dose said in drops is counted in drops.',
    steps: [
      worked('Exactly', perFillShown(step), 'each fill', perFill),
      entered('Measured with', text(measuredWith(measured)), 'Setup, what the shop measures with'),
      figure === 'error'
        ? entered('Measured', poured(measured.amount, product), 'what these marks come to')
        : entered('Off by', percent, '(measured − wanted) ÷ wanted'),
    ],
  };
}

function costWorking(mix: AskedMix, step: MixStep, number: number): FoundWorking {
  const { line, ingredient } = step;
  return {
    title: `Cost of ${ingredient.product.name} in the batch`,
    value: lineCostShown(line),
    rule: 'Drawn from the bottles that die first. A draw costs the bottle’s price × what is out of it after ÷ its size, less the same before, each rounded to a millionth. What is short costs the cheapest offer per unit.',
    steps: [
      worked('Amount', amountShown(step), 'dose × spray', mixAddress(mix, 'step', number, 'amount')),
      ...line.draws.map((draw) => drawStep(mix.shop, draw)),
      ...shortSteps(mix.shop, line),
    ],
  };
}

function shortWorking({ shop }: AskedMix, { line, ingredient }: MixStep): FoundWorking | null {
  if (line.short === 0) return null;
  const [, bought] = shortSteps(shop, line);
  return bought
    ? {
        title: `To buy the missing ${ingredient.product.name}`,
        value: bought.value,
        rule: 'What no usable bottle gives × the price of the cheapest offer per unit, as if a pack could be divided, without freight.',
        steps: shortSteps(shop, line),
      }
    : null;
}

function takeWorking(mix: AskedMix, step: MixStep, number: number, draw: Draw | undefined): FoundWorking | null {
  if (!draw) return null;
  const { product } = step.ingredient;
  return {
    title: `${product.name} out of one bottle`,
    value: poured(draw.amount, product),
    rule: 'Bottles that die first are drawn first; each gives what it has until the batch has enough.',
    steps: [
      worked('In the batch', amountShown(step), 'dose × spray', mixAddress(mix, 'step', number, 'amount')),
      drawStep(mix.shop, draw),
    ],
  };
}
