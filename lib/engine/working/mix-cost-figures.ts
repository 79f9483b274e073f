import { showMoney } from '@/shared/measure/show';
import { toNumber } from '@/shared/quantity/exact';
import type { AskedMix } from '../mix/asked-mix';
import { sourceOf } from '../mix/line-check';
import type { MixCost } from '../mix/mix-sheet';
import { type OfferLine, offerCostOf } from '../mix/offer-cost';
import type { PriceToday } from '../mix/solution-price';
import { toEnterForMinutes } from '../mix/work';
import type { Product } from '../shop';
import { lineCostShown } from './line-figures';
import { mixAddress, volume } from './mix-address';
import { count, entered, type FoundWorking, money, type Shown, type Step, text, worked } from './shown';
import { sourceSteps } from './source-steps';

/**
 * The working of what a mix costs: `material`, `perLitre`, `perPlant` or `labour`; and at the cheapest offers of today
 * `offers`, `offersPerLitre` or `offersPerPlant`.
 */
export function mixCostWorking(mix: AskedMix, [figure]: string[]): FoundWorking | null {
  switch (figure) {
    case 'material':
      return materialWorking(mix);
    case 'perLitre':
    case 'perPlant':
      return perWorking(mix, figure);
    case 'offers':
      return offersWorking(mix);
    case 'offersPerLitre':
      return perWorking(mix, 'perLitre', AT_OFFERS);
    case 'offersPerPlant':
      return perWorking(mix, 'perPlant', AT_OFFERS);
    case 'labour':
      return labourWorking(mix);
    default:
      return null;
  }
}

const NO_COST = 'The cost of something in the mix is unknown.';

const materialWorking = (mix: AskedMix): FoundWorking => ({
  title: `Product in the batch: ${mix.recipe.name}`,
  value: money(mix.sheet.cost.material, NO_COST),
  rule: 'What each ingredient costs, added up, as the bottles would give it now. Unknown as soon as one of them is unknown. Labour is a line of its own.',
  steps: mix.sheet.steps.map(({ line, ingredient: { product, dose } }, number) =>
    worked(product.name, lineCostShown(line), dose.text, mixAddress(mix, 'step', number, 'cost')),
  ),
});

/** The working of one line at its cheapest offer: `step/N/offerCost`. */
export function offerLineWorking(mix: AskedMix, number: number): FoundWorking | null {
  const step = mix.sheet.steps[number];
  const line = offerCostOf(mix.shop, mix.sheet).lines[number];
  if (!step || !line) return null;
  const { product } = step.ingredient;
  const { amount } = step.line;
  return {
    title: `${product.name} in the batch at the cheapest offer`,
    value: offerShown(line),
    rule: line.price.from.length > 0 ? OF_WHAT_IT_HOLDS : AT_ITS_OFFER,
    steps: [
      worked(
        'Amount',
        amount === null ? { kind: 'unknown', because: NO_AMOUNT } : { kind: 'stock', amount, form: product.form },
        'dose × spray',
        mixAddress(mix, 'step', number, 'amount'),
      ),
      ...offerSteps(mix, product, line.price),
    ],
  };
}

const AT_ITS_OFFER =
  'Amount × the price per unit of the offer that is cheapest today, as if a pack could be divided, without freight.';
const OF_WHAT_IT_HOLDS =
  'Nobody sells a stock solution: amount × what is in each litre of it × the price per unit of the offer of that which is cheapest today, as if a pack could be divided, without freight. Water costs nothing.';

function offerSteps({ shop }: AskedMix, product: Product, { offer, from, missing }: PriceToday): Step[] {
  if (from.length > 0) return from.flatMap((source) => sourceSteps(product, sourceOf(source)));
  const said = offer
    ? text(`${offer.supplier.name}, ${offer.packText} at ${showMoney(offer.price, shop.currency)}`)
    : money(null, missing ?? NO_OFFER);
  return [entered('Cheapest offer', said, 'Buy, the offers')];
}

const NO_OFFER = 'No supplier offers it.';
const NO_AMOUNT = 'How much of it the batch takes is not known.';

const offerShown = ({ cost, price: { unit, missing } }: OfferLine): Shown =>
  money(cost, unit ? NO_AMOUNT : (missing ?? NO_OFFER));

const offersWorking = (mix: AskedMix): FoundWorking => {
  const { lines, material } = offerCostOf(mix.shop, mix.sheet);
  return {
    title: `The batch at the cheapest offers: ${mix.recipe.name}`,
    value: money(material, NO_COST),
    rule: 'What each ingredient would cost if all of it were bought today at the offer that is cheapest per unit, added up. As if packs could be divided, without freight. Unknown as soon as one of them is unknown.',
    steps: mix.sheet.steps.flatMap(({ ingredient: { product } }, number) => {
      const line = lines[number];
      if (!line) return [];
      const { offer, from } = line.price;
      const said = offer?.supplier.name ?? (from.length > 0 ? 'what it is made from' : NO_OFFER);
      return worked(product.name, offerShown(line), said, mixAddress(mix, 'step', number, 'offerCost'));
    }),
  };
};

/** What is spread over litres and plants: as the bottles give it, or all of it bought. */
type Spread = { figure: string; cost: (mix: AskedMix) => Omit<MixCost, 'labour'>; label: string };

const AS_DRAWN: Spread = { figure: 'material', cost: ({ sheet }) => sheet.cost, label: 'Product in the batch' };
const AT_OFFERS: Spread = {
  figure: 'offers',
  cost: ({ shop, sheet }) => offerCostOf(shop, sheet),
  label: 'The batch at the cheapest offers',
};

function perWorking(mix: AskedMix, figure: 'perLitre' | 'perPlant', spread: Spread = AS_DRAWN): FoundWorking | null {
  const cost = spread.cost(mix);
  const { plants, spray } = mix.batch;
  const perPlant = figure === 'perPlant';
  if (perPlant && plants === null) return null;
  return {
    title: `Cost of ${perPlant ? 'a plant' : 'a litre'}: ${mix.recipe.name}`,
    value: money(cost[figure], NO_COST),
    rule: `${spread.label} ÷ ${perPlant ? 'plants' : `${toNumber(spray.total) / 1000} litres mixed`}. Labour is not in it.`,
    steps: [
      worked(spread.label, money(cost.material, NO_COST), 'the ingredients', mixAddress(mix, 'cost', spread.figure)),
      perPlant
        ? worked('Plants', count(plants ?? 0, 'plants'), 'the benches', mixAddress(mix, 'plants'))
        : worked('Spray mixed', volume(spray.total), 'benches and sprayer', mixAddress(mix, 'sprayMl')),
    ],
  };
}

function labourWorking(mix: AskedMix): FoundWorking {
  const { shop, planned, worked: minutes, sheet } = mix;
  const because = minutes === null ? toEnterForMinutes(shop) : 'Enter the wage per hour in Setup, the shop.';
  const wage = entered('Wage per hour', money(shop.wagePerHour, 'No wage was entered.'), SETUP);
  return {
    title: 'Labour',
    value: money(sheet.cost.labour, because),
    ...(planned
      ? {
          rule: 'Minutes ÷ 60 × wage per hour.',
          steps: [
            entered('Minutes', { kind: 'minutes', minutes: planned.program.duration }, `program ${planned.program.id}`),
            wage,
          ],
        }
      : {
          rule: '(Minutes for each plant × plants + minutes for the batch) ÷ 60 × wage per hour.',
          steps: [...unplannedSteps(mix), wage],
        }),
  };
}

const SETUP = 'Setup, the shop';
const NO_MINUTES = 'No minutes were entered.';

const unplannedSteps = (mix: AskedMix): Step[] => [
  entered('Minutes for each plant', minutesShown(mix.shop.minutesPerPlant), SETUP),
  mix.batch.plants === null
    ? entered('Plants', { kind: 'unknown', because: 'Only a volume was asked for.' }, 'what is mixed')
    : worked('Plants', count(mix.batch.plants, 'plants'), 'the benches', mixAddress(mix, 'plants')),
  entered('Minutes for the batch', minutesShown(mix.shop.minutesPerBatch), SETUP),
];

const minutesShown = (minutes: number | null): Shown =>
  minutes === null ? { kind: 'unknown', because: NO_MINUTES } : count(minutes, 'minutes');
