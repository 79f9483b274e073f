import { showMinutes, showNumber } from '@/shared/measure/show';
import { toNumber } from '@/shared/quantity/exact';
import type { AskedMix } from '../engine/mix/asked-mix';
import { groundFor } from '../engine/mix/dry-run';
import { jarAmount } from '../engine/mix/jar-test';
import { unitOf } from '../engine/working/mix-step-figures';
import { jugRange, jugText, jugUnitText } from './jug-text';

/** A batch in words and plain numbers, for whoever cannot open a figure: a printer, a phone without a network. */
export type MixWords = {
  plants: number | null;
  plantsText: string | null;
  sprayMl: number;
  sprayText: string;
  fills: number;
  fillMl: number;
  fillText: string;
  /** How much water goes into each fill first. */
  waterFirstText: string;
  /** Null: an interval is not known, so keep out until somebody enters it. */
  rei: string | null;
  useWithin: string | null;
  jar: { product: string; text: string }[];
};

/** What a batch is, in words; spray in the unit and at the marks of the jug or tank that it is mixed in. */
export function mixWords(mix: AskedMix): MixWords {
  const { batch, sheet, sprayer } = mix;
  const { spray, plants } = batch;
  const { least, most } = sheet.waterFirst;
  return {
    plants,
    plantsText: plantsText(mix),
    sprayMl: toNumber(spray.total),
    sprayText: spray.fills === 1 ? jugText(spray.fill, sprayer) : jugUnitText(spray.total, sprayer),
    fills: spray.fills,
    fillMl: toNumber(spray.fill),
    fillText: jugText(spray.fill, sprayer),
    waterFirstText: jugRange(least, most, sprayer),
    rei: sheet.rei === null ? null : showMinutes(sheet.rei),
    useWithin: sheet.useWithin === null ? null : showMinutes(sheet.useWithin),
    jar: jarOf(mix),
  };
}

/** Which plants, when not all on their benches: "14 Basil on Herb trays". Null when it is all of them, or nobody knows. */
function plantsText({ what, batch }: AskedMix): string | null {
  if (what.kind !== 'plants') return null;
  return batch.benches
    .map(({ name, plants }) => `${plants.map((group) => `${group.count} ${group.name}`).join(', ')} on ${name}`)
    .join('; ');
}

/** Each ingredient in its turn, for half a litre. */
const jarOf = (mix: AskedMix): MixWords['jar'] =>
  mix.sheet.steps.map(({ ingredient }) => {
    const amount = jarAmount(ingredient, groundFor(mix.batch));
    const { name, form } = ingredient.product;
    return {
      product: name,
      text: amount ? `${showNumber(toNumber(amount) / 1000)} ${unitOf(form)}` : 'not known',
    };
  });
