import { bottleCode } from '@/shared/codes/bottle-code';
import { showNumber, showRough, showVolume, type Units } from '@/shared/measure/show';
import { type Exact, toNumber } from '@/shared/quantity/exact';
import type { SpotNamed } from '../data/container-names';
import type { Draw } from '../engine/ahead/plan';
import type { AskedMix } from '../engine/mix/asked-mix';
import { isFarOff, type Measured, markText, measuredWith } from '../engine/mix/measuring';
import type { Better, MixStep } from '../engine/mix/mix-step';
import type { Container, Product } from '../engine/shop';
import { bottleName } from '../engine/working/line-figures';
import { unitOf } from '../engine/working/mix-step-figures';
import { figureAddress } from '../engine/working/shown';
import { lastingAddress } from './bottle-address';
import { type Liquid, liquidOf } from './bottle-seen';
import type { Fig, FigAt } from './figures';
import type { HereNow } from './house';

/** One ingredient in its turn: how much, out of which bottles, and why now. */
export type MixPour = {
  /** From 1. */
  order: number;
  product: { id: string; name: string; form: Product['form'] };
  liquid: Liquid;
  dose: string;
  /** Exactly, for one fill: "29.57 mL"; null when it is not known, and then `missing` says what to enter. */
  perFillText: string | null;
  missing: string | null;
  /** Whole µL or mg for all fills; null when it is not known. */
  amount: number | null;
  amountText: string | null;
  /** µL or mg for one fill, not rounded. */
  perFillAmount: number | null;
  measured: MeasuredSeen | null;
  /** Where measuring is off by more than 5 %: what would bring it within. */
  tooCoarse: TooCoarse | null;
  why: string;
  /** Whether somebody's word put it here instead of the usual order. */
  orderOverridden: boolean;
  /** In the order in which they are drawn from. */
  bottles: BottleToTake[];
  /** What no bottle gives, µL or mg for all fills; null in words when nothing is short. */
  short: number;
  shortText: string | null;
  figures: { perFill: Fig; amount: Fig; measured: Fig | null; error: Fig | null; cost: Fig; shortCost: Fig | null };
};

/** `text` is what these marks come to, `with` the marks: "10 mL syringe, to 3.5 mL"; `mark` as printed: "1/4 tsp". */
type MeasuredSeen = {
  text: string;
  mark: string;
  with: string;
  amount: number;
  errorPercent: number;
  errorText: string;
  /** Whether it is so far off that it is not to be poured. */
  isFarOff: boolean;
};

export type TooCoarse = {
  /** A batch of which it could be measured well enough. */
  biggerBatch: { ml: number; text: string } | null;
  stockSolution: StockSolutionSeen | null;
};

/** Product for several batches, made up with water, of which each batch takes a part that can be measured. */
type StockSolutionSeen = {
  batches: number;
  productAmount: number;
  productText: string;
  productWith: string;
  makeUpToMl: number;
  makeUpToText: string;
  useText: string;
  useWith: string;
};

/** A bottle to take from the shelf, by where it stands in the books. */
export type BottleToTake = {
  lotId: string;
  place: number;
  /** "Light oil, 1 gal, received Tue 3 March", and the code that its printed label carries. */
  label: string;
  code: string;
  href: string;
  keptIn: string | null;
  opened: boolean;
  leftText: string;
  left: number;
  takeText: string;
  /** µL or mg. */
  take: number;
  figures: { left: Fig; take: Fig };
};

/** The pours of a mix in their order. */
export const mixPours = (mix: AskedMix, ways: HereNow['ways'], figure: FigAt, spots: SpotNamed): MixPour[] =>
  mix.sheet.steps.map((step, number) =>
    pourOf(
      step,
      { units: ways.units, fill: mix.batch.spray.fill },
      (...path) => figure('step', number, ...path),
      spots,
    ),
  );

function pourOf(
  step: MixStep,
  { units, fill }: { units: Units; fill: Exact },
  figure: FigAt,
  spots: SpotNamed,
): MixPour {
  const { ingredient, line, perFill, measured, better } = step;
  const { product, dose } = ingredient;
  return {
    order: step.order,
    product: { id: product.id, name: product.name, form: product.form },
    liquid: liquidOf(product),
    dose: dose.text,
    perFillText: perFill && pouredText(perFill, product),
    missing: step.missing,
    amount: line.amount,
    amountText: line.amount === null ? null : pouredText(line.amount, product),
    perFillAmount: perFill && toNumber(perFill),
    measured: measured && measuredSeen(measured, product, better !== null),
    tooCoarse: better && tooCoarse(better, product, units, fill),
    why: step.why,
    orderOverridden: step.overriddenBy !== null,
    bottles: line.draws.flatMap((draw, number) => bottleToTake(draw, figure('take', number), spots) ?? []),
    short: line.short,
    shortText: line.short > 0 ? pouredText(line.short, product) : null,
    figures: {
      perFill: figure('perFill'),
      amount: figure('amount'),
      measured: measured && figure('measured'),
      error: measured && figure('error'),
      cost: figure('cost'),
      shortCost: line.short > 0 ? figure('shortCost') : null,
    },
  };
}

const measuredSeen = (measured: Measured, product: Product, isFlagged: boolean): MeasuredSeen => ({
  text: pouredText(measured.amount, product),
  mark: markText(measured),
  with: measuredWith(measured),
  amount: toNumber(measured.amount),
  errorPercent: toNumber(measured.error) * 100,
  errorText: errorText(toNumber(measured.error) * 100, isFlagged),
  isFarOff: isFarOff(measured),
});

/** An amount as it is poured, in mL or g whatever its size. Takes µL or mg. */
export const pouredText = (amount: Exact | number, { form }: Pick<Product, 'form'>): string =>
  `${showNumber((typeof amount === 'number' ? amount : toNumber(amount)) / 1000)} ${unitOf(form)}`;

/** "+1.4 %"; an error too small to read is none. */
function errorText(percent: number, isFlagged: boolean): string {
  if (Math.abs(percent) < 0.05) return 'exact';
  // What is flagged for being over five in a hundred must not read as five.
  const size = isFlagged ? showNumber(Math.abs(percent)) : showRough(Math.abs(percent));
  return `${percent > 0 ? '+' : '−'}${size} %`;
}

const tooCoarse = ({ fillMl, solution }: Better, product: Product, units: Units, fill: Exact): TooCoarse => ({
  biggerBatch: fillMl && { ml: toNumber(fillMl), text: biggerText(fillMl, fill, units) },
  stockSolution: solution && {
    batches: solution.batches,
    productAmount: toNumber(solution.product.amount),
    productText: pouredText(solution.product.amount, product),
    productWith: measuredWith(solution.product),
    makeUpToMl: toNumber(solution.makeUpToMl),
    makeUpToText: showVolume(toNumber(solution.makeUpToMl) * 1000, 'metric'),
    useText: showVolume(toNumber(solution.useMl) * 1000, 'metric'),
    useWith: solution.useWith.name,
  },
});

/** A little more than now must not read as the same. */
function biggerText(bigger: Exact, fill: Exact, units: Units): string {
  const text = showVolume(toNumber(bigger) * 1000, units);
  return text === showVolume(toNumber(fill) * 1000, units) ? `${showNumber(toNumber(bigger))} mL` : text;
}

function bottleToTake({ container, amount }: Draw, take: Fig, spots: SpotNamed): BottleToTake | null {
  const spot = spots(container.lot, container.place);
  if (!spot) return null;
  const { product, remaining, keptIn, openedOn } = container;
  return {
    ...spot,
    label: bottleName(container),
    code: bottleCode({ lotId: spot.lotId, number: spot.place + 1 }),
    href: lastingAddress(spot),
    keptIn,
    opened: openedOn !== null,
    left: remaining,
    leftText: pouredText(remaining, product),
    take: amount,
    takeText: pouredText(amount, product),
    figures: { left: leftFig(container), take },
  };
}

/** The figure that the shelf shows for the same bottle. */
const leftFig = ({ lot, place, remaining, product: { form } }: Container): Fig => ({
  at: figureAddress('container', lot, place, 'remaining'),
  value: { kind: 'stock', amount: remaining, form },
});
