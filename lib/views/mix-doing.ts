import 'server-only';
import { bottleCode } from '@/shared/codes/bottle-code';
import type { Pairs } from '@/shared/forms/mix-query';
import { showMinutes, showNumber, showPh, showRough, showVolume, type Units } from '@/shared/measure/show';
import type { MixPlan, PlanAcid, PlanBottle, PlanPour, PlanProduct } from '@/shared/mix/mix-plan';
import { type Reading, read } from '@/shared/outcome';
import { stock, sum } from '@/shared/quantity/amounts';
import { divide, type Exact, exact, multiply, toNumber } from '@/shared/quantity/exact';
import { wholeDown, wholeNearest } from '@/shared/quantity/rounding';
import type { Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import type { SpotNamed } from '../data/container-names';
import { inDrawOrder } from '../engine/ledger/draw-order';
import { lastUsableDay } from '../engine/ledger/last-usable-day';
import { acidMeasured } from '../engine/mix/acid-measured';
import { acidSteps } from '../engine/mix/acid-steps';
import { asPoured } from '../engine/mix/as-poured';
import type { AskedMix } from '../engine/mix/asked-mix';
import { groundFor } from '../engine/mix/dry-run';
import { labelMost } from '../engine/mix/label-most';
import { leftoverPlaces } from '../engine/mix/leftover';
import { isFarOff, markOn, markText, measuredWith } from '../engine/mix/measuring';
import { unpassed } from '../engine/mix/mix-flags';
import type { Better, MixStep } from '../engine/mix/mix-step';
import { leftOfDone } from '../engine/mix/planned-turn';
import type { Container, Product } from '../engine/shop';
import { bottleName } from '../engine/working/line-figures';
import { unitOf } from '../engine/working/mix-step-figures';
import { benchStates, type Certainty, certaintyNow } from './bench-states';
import { spotsNamed } from './bottle-address';
import { liquidOf } from './bottle-seen';
import { type HereNow, shopNow } from './house';
import { acidFirstText, unreckonedText } from './mix-chemistry-seen';
import { pouredText } from './mix-pours';
import { mixAsked } from './mix-screen';
import { mixWords } from './mix-words';
import { nearTurns } from './near-turns';

/** A mix to be followed step by step, and whether that spraying is on record already. */
export type MixDoing = { plan: MixPlan; isDone: boolean };

/**
 * The mix that an address asks for, with everything that it takes to follow it from the first pour to the record without
 * asking again.
 *
 * Takes    whose name entries from this browser carry
 * Gives    null when there is no shop in this database
 * Refuses  what `mixAsked` refuses
 */
export async function mixDoing(clock: Clock, pairs: Pairs, by: string): Promise<Reading<MixDoing> | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  // Whoever begins it sprays it today, whenever it is planned for.
  const mix = mixAsked(here, pairs, true);
  if (!mix.ok) return mix;
  const plan = planOf(
    { ...here, certainty: await certaintyNow(clock, here.id) },
    mix.value,
    await spotsNamed(here.id),
    by,
  );
  const { planned } = mix.value;
  return read({ plan, isDone: planned?.became === 'done' && leftOfDone(here.shop, planned).length === 0 });
}

/** A mix as the one who makes it needs it: what its sheet says, in words, with every bottle that could be taken. */
export function planOf(here: Here, mix: AskedMix, spots: SpotNamed, by: string): MixPlan {
  const { shop, recipe, batch, sheet, sprayer, planned, query } = mix;
  const { plantsText, sprayText, fills, fillText, waterFirstText, useWithin } = mixWords(mix);
  const { units } = here.ways;
  return {
    ...{ query, shopId: here.id, zone: shop.zone, units: shop.units, currency: shop.currency, asOf: here.now, by },
    recipe: { id: recipe.id, name: recipe.name },
    planned: planned && { program: planned.program.id, on: planned.on },
    near: nearTurns(mix, here.now),
    benches: batch.benches.map(({ id, name }) => ({ id, name })),
    shopBenches: shop.benches.map(({ id, name }) => ({ id, name })),
    ...{ plantsText, sprayText, fills: Math.max(1, fills), fillText, useWithin },
    waterFirstText: waterFirstText.replace(/ (\S+) to (.+ \1)$/, ' to $2'),
    fill: microlitres(batch.spray.fill),
    level: toNumber(divide(batch.spray.fill, sprayer.capacity)),
    sprayer: sprayer.name,
    signalWord: sheet.wearing.signalWord,
    equipment: sheet.wearing.equipment,
    equipmentUnknown: sheet.wearing.equipmentUnknown.map(({ name }) => name),
    rei: sheet.rei === null ? null : showMinutes(sheet.rei),
    reiMinutes: sheet.rei,
    useWithinMinutes: sheet.useWithin,
    ...warningsOf(mix),
    pours: poursOf(mix, units),
    ...acidityOf(mix),
    products: productsOf(mix, spots),
    leftover: leftoverOf(here, mix),
    plannedCost: sheet.cost.material,
  };
}

type Here = Pick<HereNow, 'id' | 'shop' | 'now' | 'ways'> & { certainty: Certainty };

const microlitres = (ml: Exact): number => wholeNearest(multiply(ml, exact(1000n)));

/** What says stop before spraying, and what is only to be known. That stock is short shows in its own pour. */
function warningsOf({ flags }: AskedMix): Pick<MixPlan, 'stops' | 'warnings'> {
  const others = flags.filter(({ rule }) => rule !== 'short');
  return {
    stops: [...unpassed(others, [])].map(([rule, stops]) => ({ rule, messages: stops.map(({ message }) => message) })),
    warnings: others.filter(({ severity }) => severity === 'warn').map(({ message }) => message),
  };
}

/** One pour per product, whatever number of lines a recipe has it on. */
function poursOf({ recipe, batch, sheet }: AskedMix, units: Units): PlanPour[] {
  const pours = new Map<string, PlanPour>();
  for (const step of sheet.steps) {
    const most = labelMost(step.ingredient, recipe.ingredients, groundFor(batch));
    const pour = { ...pourOf(step, units), most: most && wholeDown<number>(multiply(most, batch.spray.fill)) };
    const before = pours.get(pour.product);
    pours.set(pour.product, before ? together(before, pour) : pour);
  }
  return [...pours.values()];
}

function pourOf({ ingredient, line, perFill, measured, missing, why, better }: MixStep, units: Units): PlanPour {
  const { product } = ingredient;
  // Nobody is given an amount to pour that is far from what is wanted.
  const far = measured !== null && isFarOff(measured);
  const amount = far ? perFill : (measured?.amount ?? perFill);
  return {
    product: product.id,
    perFill: amount && wholeNearest(amount),
    measuredText: far ? null : amount && pouredText(amount, product),
    measuredWith: far ? null : measured && measuredWith(measured),
    markText: far ? null : measured && markText(measured),
    mark: far ? null : measured && markOn(measured),
    tools: far || !measured ? [] : [measured.measure.name],
    exactText: perFill && pouredText(perFill, product),
    errorText: measured && errorText(toNumber(measured.error) * 100),
    ...{ missing, why },
    farOff: far
      ? `Nothing here measures that. The nearest, ${measuredWith(measured)}, is off by ${errorText(toNumber(measured.error) * 100)}: do not pour it.`
      : null,
    coarse: better && coarseText(better, units, far),
    shortText: line.short > 0 ? pouredText(line.short, product) : null,
    costMicros: line.cost,
    most: null,
  };
}

function errorText(percent: number): string | null {
  if (Math.abs(percent) < 0.05) return null;
  return `${percent > 0 ? '+' : '−'}${showRough(Math.abs(percent))} %`;
}

function coarseText({ fillMl, solution }: Better, units: Units, far: boolean): string {
  const ways = [
    fillMl ? `mix ${showVolume(toNumber(fillMl) * 1000, units)} or more in one fill` : '',
    solution ? 'make it from a stock solution, as the sheet says' : '',
  ].filter((way) => way !== '');
  const way = ways.length > 0 ? ` To come nearer, ${ways.join(', or ')};` : ' To come nearer,';
  if (far) return ways.length > 0 ? `To be able to measure it, ${ways.join(', or ')}.` : 'Take a finer measure.';
  return `Measured so, it is off by more than 5 %.${way} or use a finer measure and write under Other what you poured.`;
}

/** Two lines of one product, as one pour. */
function together(one: PlanPour, other: PlanPour): PlanPour {
  const both = one.perFill !== null && other.perFill !== null ? sum([stock(one.perFill), stock(other.perFill)]) : null;
  const cost = one.costMicros !== null && other.costMicros !== null ? one.costMicros + other.costMicros : null;
  const far = [one, other].find(({ farOff }) => farOff !== null);
  const amountText = ({ measuredText, exactText, farOff }: PlanPour) => (farOff === null ? measuredText : exactText);
  const texts = `${amountText(one) ?? 'not known'} and ${amountText(other) ?? 'not known'}`;
  const told = (each: (string | null)[]) => each.filter((text) => text !== null).join(' and ') || null;
  return {
    ...{ ...one, perFill: both, costMicros: cost, errorText: null },
    most: one.most !== null && other.most !== null ? one.most + other.most : null,
    ...(far ? { measuredText: null, exactText: texts } : { measuredText: texts, exactText: null }),
    ...{ farOff: far?.farOff ?? null, coarse: far ? far.coarse : (one.coarse ?? other.coarse) },
    measuredWith: far ? null : told([one.measuredWith, other.measuredWith]),
    markText: far ? null : told([one.markText, other.markText]),
    mark: null,
    tools: far ? [] : [...(one.tools ?? []), ...(other.tools ?? [])],
    shortText: told([one.shortText, other.shortText]),
  };
}

/** What brings one fill to its pH, and the caution about what burns. */
function acidityOf({ shop, recipe, batch, sheet }: AskedMix): Pick<MixPlan, 'pH' | 'acids' | 'ownAcid' | 'burn'> {
  const { pH, conductivity } = sheet.chemistry;
  const { steps, own } = acidSteps(shop, recipe, batch);
  const inWords = (amount: number, { form }: Product) => `${showRough(amount / batch.spray.fills)} ${unitOf(form)}`;
  const said = { message: pH.message, own: own?.message ?? null, unreckoned: unreckonedText(recipe) };
  return {
    pH: pH.target === null ? null : { ...phWords(own ? own.pH : pH.before, pH.target), ...said },
    ownAcid: own?.products.find(({ kind }) => kind === 'pH adjuster')?.id ?? null,
    acids: steps.map((step): PlanAcid => {
      const { product, missing, first, amount, corrected } = step;
      const tool = acidMeasured(step, batch.spray.fills, shop);
      return {
        product: product.id,
        firstText: acidFirstText(step, batch.spray.fills, tool),
        firstWith: tool && measuredWith(tool),
        firstTool: tool && tool.measure.name,
        allText: amount === null ? null : inWords(corrected ?? amount, product),
        expectedPh: first && showPh(first.pH),
        missing,
      };
    }),
    burn: conductivity.overLimit
      ? `Estimated at ${showNumber(conductivity.mSPerCm ?? conductivity.atLeast)} mS/cm, above the shop's ${showNumber(shop.conductivityLimit ?? 0)}: it may burn leaves. Measure it, and try it on a few plants first.`
      : null,
  };
}

const phWords = (before: number | null, target: number) => ({
  target: showPh(target),
  before: before === null ? null : showPh(before),
});

/** Every product that could go into a tank, with its bottles in the order in which they would be drawn. */
function productsOf({ shop, sheet, day }: AskedMix, spots: SpotNamed): PlanProduct[] {
  const drawn = sheet.steps.flatMap(({ line }) => line.draws.map(({ container }) => container));
  const first = new Set(drawn);
  const rest = inDrawOrder(shop.containers.filter((one) => one.remaining > 0 && !first.has(one)));
  const bottles = new Map<Product, Container[]>();
  for (const one of [...first, ...rest]) bottles.set(one.product, [...(bottles.get(one.product) ?? []), one]);
  return shop.products.map((product) => ({
    ...{ id: product.id, name: product.name, form: product.form },
    ...{ densityGPerMl: product.densityGPerMl, gramsPerTeaspoon: product.gramsPerTeaspoon },
    ...{ liquid: liquidOf(product), reiMinutes: product.label.rei },
    bottles: (bottles.get(product) ?? [])
      .flatMap((container) => bottleOf(container, spots, day) ?? [])
      // What is past its last day comes after all that is not.
      .sort((one, other) => Number(one.expired !== null) - Number(other.expired !== null)),
  }));
}

function bottleOf(container: Container, spots: SpotNamed, today: Day): PlanBottle | null {
  const last = lastUsableDay(container);
  const spot = spots(container.lot, container.place);
  if (!spot) return null;
  return {
    ...{ lotId: spot.lotId, place: spot.place, label: bottleName(container) },
    code: bottleCode({ lotId: spot.lotId, number: spot.place + 1 }),
    ...{ keptIn: container.keptIn, opened: container.openedOn !== null, left: container.remaining },
    expired: last !== null && last < today ? showDay(last) : null,
  };
}

function leftoverOf({ shop, now, ways, certainty }: Here, { recipe, batch, sheet }: AskedMix): MixPlan['leftover'] {
  const poured = sheet.steps.flatMap(({ ingredient: { product }, line: { amount } }) =>
    amount === null || amount === 0 ? [] : [{ product, from: [], elsewhere: stock(0), total: amount }],
  );
  if (poured.length < sheet.steps.length) return [];
  const mixed = asPoured(recipe, poured, batch.spray.total);
  // Whatever the board keeps people out of takes nothing, such as a bench that may have been sprayed as planned.
  const mixedFor = new Set(batch.benches.map(({ id }) => id));
  const open = benchStates(shop, now, certainty).flatMap(({ bench, state }) =>
    state === 'open' && !mixedFor.has(bench.id) ? bench : [],
  );
  return leftoverPlaces(shop, mixed, open, now).map(({ bench, roomMl, inProgram }) => ({
    ...{ id: bench.id, name: bench.name, inProgram },
    roomText: showVolume(toNumber(roomMl) * 1000, ways.units),
  }));
}
