import { moneyText } from '@/shared/measure/money';
import { toNumber } from '@/shared/quantity/exact';
import { flagIn } from '../ahead/plan-document';
import { type Assumed, assumedIn } from '../buying/assumed';
import type { Product } from '../shop';
import { measuredWith } from './measuring';
import type { MixPh } from './mix-chemistry';
import type { MixSheet } from './mix-sheet';
import type { MixStep } from './mix-step';

export type MixDocument = ReturnType<typeof mixDocument>;

/**
 * A mix sheet as the `shop` command and the HTTP API print it.
 *
 * Takes   the sheet of a finished volume in one fill, and what is taken for granted of the bottles that it is drawn from
 * Units   mL of a liquid and g of a powder as plain numbers, not rounded; money as decimal text with six places
 * Gives   null for whatever is unknown; errorPercent is above nothing where measuring puts too much in
 */
export const mixDocument = (
  { batch, steps, chemistry, rei, wearing, cost, flags }: MixSheet,
  assumed: readonly Assumed[] = [],
) => ({
  ml: toNumber(batch.spray.total),
  steps: steps.map(stepIn),
  strength: chemistry.strength.map(({ substance, mgPerL }) => ({ substance, mgPerL })),
  elements: chemistry.elements.map(({ element, mgPerL }) => ({ element, mgPerL })),
  pH: phIn(chemistry.pH),
  reiHours: rei === null ? null : rei / MINUTES_PER_HOUR,
  protectiveEquipment: wearing.equipment,
  cost: cost.material === null ? null : moneyText(cost.material),
  flags: flags.map(flagIn),
  assumed: assumedIn(assumed),
});

const MINUTES_PER_HOUR = 60;

const stepIn = ({ order, ingredient: { product }, perFill, measured, why }: MixStep) => ({
  order,
  product: product.id,
  amount: perFill && toNumber(perFill) / STOCK_PER_UNIT,
  unit: unitOf(product),
  measured: measured && toNumber(measured.amount) / STOCK_PER_UNIT,
  measuredWith: measured && measuredWith(measured),
  errorPercent: measured && toNumber(measured.error) * 100,
  why,
});

/** A thousand µL or mg to the mL or g. */
const STOCK_PER_UNIT = 1000;

const phIn = ({ before, target, acidMeqPerL, acids, own }: MixPh) => ({
  before,
  target,
  acidMeqPerL,
  acids: acids.map(acidIn),
  ...(own && {
    own: {
      products: own.products.map(({ id }) => id),
      pH: own.pH,
      acidMeqPerL: own.left,
      acids: own.acids.map(acidIn),
    },
  }),
});

const acidIn = ({ product, amount }: Pick<MixPh['acids'][number], 'product' | 'amount'>) => ({
  product: product.id,
  amount,
  unit: unitOf(product),
});

const unitOf = ({ form }: Product): 'mL' | 'g' => (form === 'liquid' ? 'mL' : 'g');
