import { whatIfOfText } from '@/shared/forms/what-if';
import { showMoney } from '@/shared/measure/show';
import type { Fault } from '@/shared/outcome';
import { showDay } from '@/shared/time/show-day';
import type { Plan } from '../ahead/plan';
import { type Supposed, supposedOf } from '../ahead/supposed';
import { supposedProjection } from '../ahead/what-if';
import type { Program, Shop } from '../shop';
import { entered, type FoundWorking, figureAddress, type Shown, text, worked } from './shown';

/** Finds a figure of a plan by its address, part by part. */
type Find = (plan: Plan, path: string[]) => FoundWorking | null;

/**
 * The working of a figure under what is supposed: `WHAT IS SUPPOSED/FIGURE`, or of what it would be more or less:
 * `WHAT IS SUPPOSED/change/FIGURE`. Every figure of a plan has one, and its inputs are those that are supposed.
 */
export function whatIfWorking(plan: Plan, [asked = '', ...path]: string[], find: Find): FoundWorking | null {
  const isChange = path[0] === 'change';
  const figure = isChange ? path.slice(1) : path;
  // What is supposed is supposed of the plan as it is, and of nothing else.
  if (figure[0] === 'what-if') return null;
  const { supposed, next } = supposedIn(plan, asked);
  const then = find(next, figure);
  if (!then) return null;
  const within = `${figureAddress('what-if', asked)}/`;
  if (isChange) {
    const now = find(plan, figure);
    return now && changeWorking(plan.shop, { then, now, address: figureAddress(...figure), within });
  }
  return {
    title: `${then.title}, if …`,
    value: then.value,
    rule: then.rule,
    get steps() {
      const now = find(plan, figure);
      return [
        ...supposedWords(supposed).map((words) => entered('Supposed', text(words), 'nothing of it is saved')),
        ...then.steps.map((step) => (step.figure ? { ...step, figure: `${within}${step.figure}` } : step)),
        ...(now ? [worked('As it is planned', now.value, 'without what is supposed', figureAddress(...figure))] : []),
      ];
    },
  };
}

/** The weeks ahead as they are supposed, what is supposed of them, and what of that the shop cannot suppose. */
export type SupposedAhead = { supposed: Supposed; faults: Fault[]; next: Plan };

const last = new WeakMap<Plan, SupposedAhead & { asked: string }>();

/** What is supposed of a plan, in one line as an address has it; worked out once for as long as it stays the same. */
export function supposedIn(plan: Plan, asked: string): SupposedAhead {
  const known = last.get(plan);
  if (known?.asked === asked) return known;
  const { supposed, faults } = supposedOf(plan, whatIfOfText(asked));
  // No rule is asked of what is only supposed.
  const found = { asked, supposed, faults, next: { ...supposedProjection(plan, supposed), flags: [] } };
  last.set(plan, found);
  return found;
}

type Both = { then: FoundWorking; now: FoundWorking; address: string; within: string };

const changeWorking = ({ currency }: Shop, { then, now, address, within }: Both): FoundWorking => ({
  title: `${then.title}: more or less, if …`,
  value: differenceShown(then.value, now.value, currency),
  rule: 'What it would be − what it is as planned.',
  steps: [
    worked('As it would be', then.value, 'with what is supposed', `${within}${address}`),
    worked('As it is planned', now.value, 'without what is supposed', address),
  ],
});

/** One amount less another, in words that say which way it goes. */
function differenceShown(then: Shown, now: Shown, currency: string): Shown {
  if (then.kind === 'money' && now.kind === 'money') {
    const more = moreOrLess(then.micros - now.micros, (micros) => showMoney(micros, currency));
    return text(then.unknown || now.unknown ? `${more}, as far as it is known` : more);
  }
  if (then.kind === 'count' && now.kind === 'count') return text(moreOrLess(then.value - now.value, String));
  return { kind: 'unknown', because: 'One of the two is not known, or not an amount.' };
}

const moreOrLess = (by: number, show: (by: number) => string): string =>
  by === 0 ? 'the same' : `${show(Math.abs(by))} ${by > 0 ? 'more' : 'less'}`;

/** What is supposed, a sentence for each part of it. */
function supposedWords({ product, ...supposed }: Supposed): string[] {
  const { pricePercent, usePercent, extra, lostFrom, bench } = supposed;
  const of = product?.name ?? 'every product';
  return [
    ...(pricePercent === 100 ? [] : [`the price of ${of} is ${pricePercent} % of what it is`]),
    ...(usePercent === 100 ? [] : [`the use of ${of} is ${usePercent} % of what it is`]),
    ...(extra ? [`${programName(extra.program)} once more on ${showDay(extra.on)}`] : []),
    ...(lostFrom ? [`nothing is sprayed for the seven days from ${showDay(lostFrom)}`] : []),
    ...(bench ? [`${bench.plants} plants more at ${bench.mlPerPlant} mL each with ${programName(bench.program)}`] : []),
  ];
}

const programName = ({ recipes }: Program): string => recipes.map(({ name }) => name).join(', ');
