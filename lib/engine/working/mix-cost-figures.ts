import { toNumber } from '@/shared/quantity/exact';
import type { AskedMix } from '../mix/asked-mix';
import { lineCostShown } from './line-figures';
import { mixAddress, volume } from './mix-address';
import { count, entered, type FoundWorking, money, worked } from './shown';

/** The working of what a mix costs: `material`, `perLitre`, `perPlant` or `labour`. */
export function mixCostWorking(mix: AskedMix, [figure]: string[]): FoundWorking | null {
  switch (figure) {
    case 'material':
      return materialWorking(mix);
    case 'perLitre':
    case 'perPlant':
      return perWorking(mix, figure);
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

function perWorking(mix: AskedMix, figure: 'perLitre' | 'perPlant'): FoundWorking | null {
  const { cost } = mix.sheet;
  const { plants, spray } = mix.batch;
  const perPlant = figure === 'perPlant';
  if (perPlant && plants === null) return null;
  const material = money(cost.material, NO_COST);
  return {
    title: `Cost of ${perPlant ? 'a plant' : 'a litre'}: ${mix.recipe.name}`,
    value: money(cost[figure], NO_COST),
    rule: `Product in the batch ÷ ${perPlant ? 'plants' : `${toNumber(spray.total) / 1000} litres mixed`}. Labour is not in it.`,
    steps: [
      worked('Product in the batch', material, 'the ingredients', mixAddress(mix, 'cost', 'material')),
      perPlant
        ? worked('Plants', count(plants ?? 0, 'plants'), 'the benches', mixAddress(mix, 'plants'))
        : worked('Spray mixed', volume(spray.total), 'benches and sprayer', mixAddress(mix, 'sprayMl')),
    ],
  };
}

function labourWorking({ shop, worked: took, planned, sheet }: AskedMix): FoundWorking {
  const because =
    took === null ? 'No program says how long this takes.' : 'No wage per hour was entered in Setup, the shop.';
  return {
    title: 'Labour',
    value: money(sheet.cost.labour, because),
    rule: 'Minutes ÷ 60 × wage per hour.',
    steps: [
      entered(
        'Minutes',
        took === null ? { kind: 'unknown', because } : { kind: 'minutes', minutes: took },
        planned ? `program ${planned.program.id}` : 'this mix is not planned',
      ),
      entered('Wage per hour', money(shop.wagePerHour, 'No wage was entered.'), 'Setup, the shop'),
    ],
  };
}
