import type { AskedMix } from '../engine/mix/asked-mix';
import type { Fig, FigAt } from './figures';

/** What a mix costs, ingredient by ingredient, in the order in which they go in. Labour is a line of its own. */
export type MixCostSeen = {
  lines: { product: string; cost: Fig; short: Fig | null; offer: Fig }[];
  material: Fig;
  /** Micros, as the record is to keep it; null when it is not known. */
  materialMicros: number | null;
  perLitre: Fig;
  perPlant: Fig | null;
  labour: Fig;
  /** The same batch if all of it were bought today, at the cheapest offers. */
  offers: { material: Fig; perLitre: Fig; perPlant: Fig | null };
};

/** The cost ladder of a mix. */
export const mixCostSeen = ({ sheet, batch }: AskedMix, figure: FigAt): MixCostSeen => ({
  lines: sheet.steps.map(({ ingredient, line }, number) => ({
    product: ingredient.product.name,
    cost: figure('step', number, 'cost'),
    short: line.short > 0 ? figure('step', number, 'shortCost') : null,
    offer: figure('step', number, 'offerCost'),
  })),
  material: figure('cost', 'material'),
  materialMicros: sheet.cost.material,
  perLitre: figure('cost', 'perLitre'),
  perPlant: batch.plants === null ? null : figure('cost', 'perPlant'),
  labour: figure('cost', 'labour'),
  offers: {
    material: figure('cost', 'offers'),
    perLitre: figure('cost', 'offersPerLitre'),
    perPlant: batch.plants === null ? null : figure('cost', 'offersPerPlant'),
  },
});
