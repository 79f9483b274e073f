import 'server-only';
import { mixQueryText, type Pairs, readMixQuery } from '@/shared/forms/mix-query';
import { type Reading, read } from '@/shared/outcome';
import { divide, toNumber } from '@/shared/quantity/exact';
import type { Day } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import type { Clock } from '../clock';
import type { SpotNamed } from '../data/container-names';
import { type AskedMix, askedMix } from '../engine/mix/asked-mix';
import { unpassed } from '../engine/mix/mix-flags';
import { leftOfDone, type PlannedTurn } from '../engine/mix/planned-turn';
import type { Flag, RuleName } from '../engine/rules/flag';
import type { Shop } from '../engine/shop';
import { mixAddress } from '../engine/working/mix-address';
import { mixFigure } from '../engine/working/mix-figures';
import { spotsNamed } from './bottle-address';
import type { Fig, FigAt } from './figures';
import { type HereNow, shopNow } from './house';
import { type MixChemistrySeen, mixChemistrySeen } from './mix-chemistry-seen';
import { type MixCostSeen, mixCostSeen } from './mix-cost-seen';
import { type MixForm, mixForm } from './mix-form';
import { type MixPour, mixPours } from './mix-pours';
import { type MixWords, mixWords } from './mix-words';

/** A mix as its sheet and the pages that are followed pour by pour need it. Plain data, which may be kept on a device. */
export type MixScreen = MixWords & {
  /** The address that asks for it, after the question mark; the same for `/mix/sheet` and `/mix/do`. */
  query: string;
  shopId: string;
  today: Day;
  now: Instant;
  ways: HereNow['ways'];
  recipe: { id: string; name: string };
  planned: {
    program: string;
    /** The day on which the program itself has it. */
    on: Day;
    /** The day it is on now. */
    date: Day;
    startsAt: Instant;
    /** What became of it; null: still to be sprayed. A mix that is done is not to be mixed again. */
    became: 'done' | 'skipped' | null;
  } | null;
  benches: { id: string; name: string }[];
  plants: number | null;
  sprayMl: number;
  fillMl: number;
  fills: number;
  sprayer: string;
  /** The part of the sprayer that one fill takes, 0 to 1. */
  level: number;
  useWithinMinutes: number | null;
  /** Null: an interval is not known, so keep out until somebody enters it. */
  reiMinutes: number | null;
  signalWord: string | null;
  equipment: string[];
  /** Products without a piece of equipment entered. */
  equipmentUnknown: string[];
  steps: MixPour[];
  chemistry: MixChemistrySeen;
  cautions: { message: string; source: string | null }[];
  /** Pairs that no record ever had in one tank. */
  untried: [string, string][];
  jar: { product: string; text: string }[];
  /** Every rule that it breaks, the gravest first. */
  flags: Flag[];
  /** The rules that say stop: each needs a reason. */
  stops: { rule: RuleName; messages: string[] }[];
  cost: MixCostSeen;
  figures: MixFigures;
};

/** The figures of the batch as a whole; each opens its working. */
type MixFigures = {
  sprayMl: Fig;
  fills: Fig;
  fill: Fig;
  plants: Fig | null;
  waterFirst: Fig;
  rei: Fig;
  useWithin: Fig;
};

/**
 * The mix that an address asks for, in the shop that is looked at.
 *
 * Gives    null when there is no shop in this database
 * Refuses  with one sentence for people, whatever `readMixQuery` and `askedMix` refuse
 */
export async function mixScreen(clock: Clock, pairs: Pairs): Promise<Reading<MixScreen> | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const mix = mixAsked(here, pairs);
  return mix.ok ? read(mixSeen(here, mix.value, await spotsNamed(here.id))) : mix;
}

/** The form that asks for a mix, filled as an address has it. Null when there is no shop in this database. */
export async function mixFormScreen(clock: Clock, pairs: Pairs): Promise<MixForm | null> {
  const here = await shopNow(clock);
  return here && mixForm(here.shop, pairs);
}

/** The mix that an address asks for, worked out: as it is planned, or as it is when somebody mixes it now. */
export function mixAsked({ shop, now }: Pick<HereNow, 'shop' | 'now'>, pairs: Pairs, isNow = false): Reading<AskedMix> {
  const query = readMixQuery(pairs);
  return query.ok ? askedMix(shop, now, query.value, mixQueryText(query.value), isNow) : query;
}

/** A mix as plain data, with every bottle by where it stands in the books. */
export function mixSeen(here: Omit<HereNow, 'file' | 'isDemo'>, mix: AskedMix, spots: SpotNamed): MixScreen {
  const { recipe, batch, sheet, sprayer, planned, query } = mix;
  const figure = mixFigures(mix);
  return {
    ...{ query, shopId: here.id, today: here.today, now: here.now, ways: here.ways },
    ...mixWords(mix),
    recipe: { id: recipe.id, name: recipe.name },
    planned: planned && { ...namedTurn(here.shop, planned), program: planned.program.id },
    benches: batch.benches.map(({ id, name }) => ({ id, name })),
    sprayer: sprayer.name,
    level: Math.min(1, toNumber(divide(batch.spray.fill, sprayer.capacity))),
    useWithinMinutes: sheet.useWithin,
    reiMinutes: sheet.rei,
    signalWord: sheet.wearing.signalWord,
    equipment: sheet.wearing.equipment,
    equipmentUnknown: sheet.wearing.equipmentUnknown.map(({ name }) => name),
    steps: mixPours(mix, here.ways, figure, spots),
    chemistry: mixChemistrySeen(mix, figure),
    cautions: sheet.cautions.map(({ message, source }) => ({ message, source })),
    untried: sheet.untried.map(([one, other]) => [one.name, other.name]),
    flags: mix.flags,
    stops: [...unpassed(mix.flags, [])].map(([rule, flags]) => ({ rule, messages: flags.map((flag) => flag.message) })),
    cost: mixCostSeen(mix, figure),
    figures: batchFigures(mix, figure),
  };
}

const namedTurn = (shop: Shop, turn: PlannedTurn) => ({
  ...{ on: turn.on, date: turn.date, startsAt: turn.startsAt },
  // What is done on some of its benches can still be mixed for the others.
  became: leftOfDone(shop, turn).length > 0 ? null : turn.became,
});

/** The figures of a mix, as `figuresOf` has those of the plan. */
function mixFigures(mix: AskedMix): FigAt {
  return (...path) => {
    const working = mixFigure(mix, path.map(String));
    const at = mixAddress(mix, ...path);
    if (!working) throw new RangeError(`figures: nothing stands behind "${at}"`);
    return { at, value: working.value };
  };
}

const batchFigures = ({ batch }: AskedMix, figure: FigAt): MixFigures => ({
  sprayMl: figure('sprayMl'),
  fills: figure('fills'),
  fill: figure('fill'),
  plants: batch.plants === null ? null : figure('plants'),
  waterFirst: figure('waterFirst'),
  rei: figure('rei'),
  useWithin: figure('useWithin'),
});
