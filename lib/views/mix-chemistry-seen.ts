import { showRough } from '@/shared/measure/show';
import { acidMeasured } from '../engine/mix/acid-measured';
import { type AcidStep, acidSteps } from '../engine/mix/acid-steps';
import { unreckonedIn } from '../engine/mix/alkali';
import type { AskedMix } from '../engine/mix/asked-mix';
import { LEAST_FACTOR, MOST_FACTOR } from '../engine/mix/learned-correction';
import { type Measured, markText, measuredWith } from '../engine/mix/measuring';
import type { OwnAcid } from '../engine/mix/own-acid';
import { listed } from '../engine/rules/in-words';
import type { Product } from '../engine/shop';
import { unitOf } from '../engine/working/mix-step-figures';
import type { Fig, FigAt } from './figures';

/** What is in the spray and what brings it to its pH, with what is not known about it. */
export type MixChemistrySeen = {
  actives: { substance: string; strength: Fig }[];
  elements: { element: string; strength: Fig; oxide: { name: string; strength: Fig } | null }[];
  pH: {
    before: number | null;
    target: number | null;
    beforeFig: Fig;
    /** Why no acid is to be added, or why nobody can say; null when acid is to be added. */
    message: string | null;
  };
  acids: AcidSeen[];
  /** The acid that the recipe pours itself, how far it brings the pH, and what its target takes beside it. */
  own: OwnAcidSeen | null;
  correction: CorrectionSeen | null;
  conductivity: { value: Fig; atLeast: number; limit: number | null; overLimit: boolean | null; rests: string[] };
  /** What is not known and what to enter, in whole sentences. */
  unknown: string[];
};

export type OwnAcidSeen = {
  pours: { name: string; amount: Fig }[];
  pH: Fig;
  /** Null where nothing more is to be added, or nobody can say how much. */
  left: Fig | null;
  message: string;
};

/** One acid of the shop by itself. The figures are for the whole batch. */
export type AcidSeen = {
  product: { id: string; name: string };
  missing: string | null;
  estimate: Fig;
  /** "11 mL": two thirds for one fill, as the shop's tools measure it; null when it is not known. */
  firstText: string | null;
  /** What that is measured with; null when nothing there measures it. */
  firstWith: string | null;
  firstAmount: number | null;
  first: Fig | null;
  expectedPh: Fig | null;
  /** What the shop's own readings make of the whole. */
  learned: Fig | null;
  /** What of it goes into each fill, where there are several: two thirds, and the whole. Null otherwise. */
  eachFill: { first: string; all: string } | null;
};

type CorrectionSeen = {
  factor: Fig;
  readings: number;
  beyondBounds: boolean;
  least: number;
  most: number;
};

/** The chemistry of a mix. */
export function mixChemistrySeen(mix: AskedMix, figure: FigAt): MixChemistrySeen {
  const { strength, elements, pH, conductivity } = mix.sheet.chemistry;
  const { steps, correction, own } = acidSteps(mix.shop, mix.recipe, mix.batch);
  const named = new Set(elements.flatMap(({ element, oxide }) => [element, oxide?.oxide ?? element]));
  return {
    actives: strength.flatMap(({ substance }, number) =>
      named.has(substance) ? [] : [{ substance, strength: figure('strength', number) }],
    ),
    elements: elements.map(({ element, oxide }, number) => ({
      element,
      strength: figure('element', number),
      oxide: oxide && { name: oxide.oxide, strength: figure('oxide', number) },
    })),
    pH: { before: pH.before, target: pH.target, beforeFig: figure('ph'), message: pH.message },
    acids: steps.map((step, number) => acidSeen(step, number, mix, figure)),
    own: own && ownSeen(mix, own, figure),
    correction: correction && {
      factor: figure('correction'),
      readings: correction.readings,
      beyondBounds: correction.beyondBounds,
      least: LEAST_FACTOR,
      most: MOST_FACTOR,
    },
    conductivity: {
      value: figure('conductivity'),
      atLeast: conductivity.atLeast,
      limit: mix.shop.conductivityLimit,
      overLimit: conductivity.overLimit,
      rests: conductivity.rests,
    },
    unknown: unknownOf(mix, steps),
  };
}

const ownSeen = ({ sheet }: AskedMix, { products, left, message }: OwnAcid, figure: FigAt): OwnAcidSeen => ({
  pours: sheet.steps.flatMap(({ ingredient: { product } }, number) =>
    products.includes(product) ? [{ name: product.name, amount: figure('step', number, 'amount') }] : [],
  ),
  pH: figure('ownPh'),
  left: left ? figure('acidLeft') : null,
  message,
});

function acidSeen(step: AcidStep, number: number, { shop, batch }: AskedMix, figure: FigAt): AcidSeen {
  const { product, missing, first, amount, corrected } = step;
  const { fills } = batch.spray;
  const tool = acidMeasured(step, fills, shop);
  const firstText = acidFirstText(step, fills, tool);
  return {
    product: { id: product.id, name: product.name },
    missing,
    estimate: figure('acid', number),
    firstText,
    firstWith: tool && measuredWith(tool),
    firstAmount: first?.amount ?? null,
    first: first && figure('acidFirst', number),
    expectedPh: first && figure('acidPh', number),
    learned: corrected === null ? null : figure('acidLearned', number),
    eachFill:
      first && amount !== null && fills > 1
        ? { first: firstText ?? '', all: inFill(corrected ?? amount, fills, product) }
        : null,
  };
}

/** The first part of an acid for one fill: the mark on the tool, or about how much where nothing measures it. */
export const acidFirstText = ({ product, first }: AcidStep, fills: number, tool: Measured | null): string | null =>
  tool ? markText(tool) : first && inFill(first.amount, fills, product);

const inFill = (amount: number, fills: number, { form }: Product): string =>
  `${showRough(amount / fills)} ${unitOf(form)}`;

function unknownOf({ sheet, recipe }: AskedMix, acids: readonly AcidStep[]): string[] {
  const { conductivity } = sheet.chemistry;
  return [
    ...new Set([
      ...conductivity.unknown,
      ...sheet.steps.flatMap(({ missing }) => missing ?? []),
      ...acids.flatMap(({ missing }) => missing ?? []),
      ...[unreckonedText(recipe) ?? []].flat(),
    ]),
  ];
}

/** What moves the pH by an amount that no estimate counts, by name; null when there is nothing of it. */
export function unreckonedText({ ingredients }: AskedMix['recipe']): string | null {
  const names = unreckonedIn(ingredients).map(({ name }) => name);
  return names.length === 0
    ? null
    : `How ${listed(names)} moves the pH is not known here, so it is left out of the estimate. Measure.`;
}
