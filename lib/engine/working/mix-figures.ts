import { readMixQuery } from '@/shared/forms/mix-query';
import { showVolume } from '@/shared/measure/show';
import { type Exact, toNumber } from '@/shared/quantity/exact';
import type { Instant } from '@/shared/time/instant';
import { type AskedMix, askedMix } from '../mix/asked-mix';
import type { Bench, Shop } from '../shop';
import { mixAddress, volume } from './mix-address';
import { chemistryWorking } from './mix-chemistry-figures';
import { mixCostWorking } from './mix-cost-figures';
import { stepWorking } from './mix-step-figures';
import { count, entered, type FoundWorking, type Shown, type Step, text, worked } from './shown';

/** The working of a figure of a mix that somebody asks for: `QUERY/FIGURE`, where the query is that of its address. */
export function mixWorking(shop: Shop, now: Instant, [query, ...path]: string[]): FoundWorking | null {
  const asked = readMixQuery([...new URLSearchParams(query)]);
  if (!asked.ok) return null;
  const mix = askedMix(shop, now, asked.value, query ?? '');
  return mix.ok ? mixFigure(mix.value, path) : null;
}

/** The working of one figure of a mix that is worked out already. */
export function mixFigure(mix: AskedMix, [figure, ...rest]: string[]): FoundWorking | null {
  switch (figure) {
    case 'sprayMl':
      return sprayWorking(mix);
    case 'fills':
      return fillsWorking(mix);
    case 'fill':
      return fillWorking(mix);
    case 'plants':
      return plantsWorking(mix);
    case 'waterFirst':
      return waterWorking(mix);
    case 'rei':
    case 'useWithin':
      return timeWorking(mix, figure);
    case 'step':
      return stepWorking(mix, rest);
    case 'cost':
      return mixCostWorking(mix, rest);
    default:
      return figure === undefined ? null : chemistryWorking(mix, [figure, ...rest]);
  }
}

const TYPED = 'typed for this mix';

function sprayWorking(mix: AskedMix): FoundWorking {
  const { batch, what, recipe } = mix;
  const { spray } = batch;
  const title = `Spray to mix: ${recipe.name}`;
  if (what.kind === 'volume') {
    const rule = 'The volume as it was typed, taken as it is: nothing is added for what a fill loses.';
    return { title, value: volume(spray.total), rule, steps: [entered('Volume', text(what.volume.text), TYPED)] };
  }
  return {
    title,
    value: volume(spray.total),
    rule: 'Fills × each fill. What the plants take is split over as few fills as the sprayer allows, all equal.',
    steps: [
      ...plantSteps(batch.benches),
      entered('On the plants', volume(spray.onPlants), 'plants × mL per plant × coverage, added up'),
      worked('Fills', count(spray.fills, 'fills'), 'as few as the sprayer allows', mixAddress(mix, 'fills')),
      worked('Each fill', volume(spray.fill), 'all alike', mixAddress(mix, 'fill')),
    ],
  };
}

const plantSteps = (benches: readonly Bench[]): Step[] =>
  benches.flatMap((bench) =>
    bench.plants.map(({ name, pot, count: plants, mlPerPlant }) =>
      entered(
        `${bench.name}: ${name}${pot ? `, ${pot}` : ''}`,
        { kind: 'ratio', value: mlPerPlant ?? 0, unit: 'mL a plant' },
        `${plants} plants, coverage ${bench.coverage}`,
      ),
    ),
  );

const sprayerSteps = ({ sprayer }: AskedMix): Step[] => [
  entered('The sprayer holds', volume(sprayer.capacity), `Setup, ${sprayer.name}`),
  entered('Lost in each fill', volume(sprayer.lossPerFill), `Setup, ${sprayer.name}`),
  entered('Measuring step', volume(sprayer.measuringStep), `Setup, ${sprayer.name}`),
];

function fillsWorking(mix: AskedMix): FoundWorking {
  const { spray } = mix.batch;
  const isVolume = mix.what.kind === 'volume';
  return {
    title: `Fills of ${mix.sprayer.name}`,
    value: count(spray.fills, 'fills'),
    rule: isVolume
      ? 'The volume ÷ what the sprayer holds, rounded up to a whole fill.'
      : 'What goes on the plants ÷ (what the sprayer holds − what each fill loses), rounded up to a whole fill.',
    steps: [entered('On the plants', volume(spray.onPlants), 'the benches'), ...sprayerSteps(mix)],
  };
}

function fillWorking(mix: AskedMix): FoundWorking {
  const { spray } = mix.batch;
  const isVolume = mix.what.kind === 'volume';
  return {
    title: `Each fill of ${mix.sprayer.name}`,
    value: volume(spray.fill),
    rule: isVolume
      ? 'The volume ÷ fills: all alike.'
      : 'On the plants ÷ fills + what a fill loses, up to the measuring step, but never over what the sprayer holds.',
    steps: [
      entered('On the plants', volume(spray.onPlants), 'the benches'),
      worked('Fills', count(spray.fills, 'fills'), 'as few as the sprayer allows', mixAddress(mix, 'fills')),
      ...sprayerSteps(mix),
    ],
  };
}

function plantsWorking({ batch, recipe }: AskedMix): FoundWorking | null {
  if (batch.plants === null) return null;
  return {
    title: `Plants: ${recipe.name}`,
    value: count(batch.plants, 'plants'),
    rule: 'Every plant that this mix is for, counted once.',
    steps: batch.benches.flatMap((bench) =>
      bench.plants.map((group) =>
        entered(`${bench.name}: ${group.name}`, count(group.count, 'plants'), `bench ${bench.name}`),
      ),
    ),
  };
}

function waterWorking(mix: AskedMix): FoundWorking {
  const { least, most } = mix.sheet.waterFirst;
  const words = (ml: Exact) => showVolume(toNumber(ml) * 1000, mix.shop.units);
  const value = words(least) === words(most) ? words(most) : `${words(least)} to ${words(most)}`;
  return {
    title: 'Water before anything else, in each fill',
    value: text(value),
    rule: 'Half to three quarters of the fill, but never so much that what is poured in after it would not fit. At the end water is filled up to the volume.',
    steps: [worked('Each fill', volume(mix.batch.spray.fill), 'benches and sprayer', mixAddress(mix, 'fill'))],
  };
}

function timeWorking({ recipe, sheet }: AskedMix, figure: 'rei' | 'useWithin'): FoundWorking {
  if (figure === 'useWithin') {
    return {
      title: `Use ${recipe.name} within`,
      value: minutesShown(recipe.useWithin, 'Nobody entered how long this mix stays good.'),
      rule: 'As it stands in the recipe. A mix that stood longer is neither kept nor sprayed.',
      steps: [],
    };
  }
  const because = 'An interval was never entered from its label. Keep out until somebody enters it.';
  return {
    title: `Keep out after ${recipe.name}`,
    value: minutesShown(sheet.rei, because),
    rule: 'The longest restricted-entry interval in the mix, in elapsed hours, counted from the end of spraying. One unknown interval keeps the bench closed. The label governs.',
    steps: recipe.ingredients.map(({ product }) =>
      entered(`REI of ${product.name}`, minutesShown(product.label.rei, because), `label of ${product.name}`),
    ),
  };
}

const minutesShown = (minutes: number | null, because: string): Shown =>
  minutes === null ? { kind: 'unknown', because } : { kind: 'minutes', minutes };
