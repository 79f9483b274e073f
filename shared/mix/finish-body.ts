import { readCelsius } from '../forms/celsius';
import { readStock, stockText } from '../measure/read-stock';
import { readVolume } from '../measure/size';
import type { Fault } from '../outcome';
import { stock } from '../quantity/amounts';
import { onOneLine } from '../text/text-fault';
import { instantOf, instantText } from '../time/instant';
import { localTimeText, readLocalTime } from '../time/local-time';
import { productIn } from './mix-plan';
import type { MixProgress, Pour } from './mix-progress';
import { fillsOf, plannedPour, pourIn, pourKey, productsOf } from './mix-screens';
import { pouredInAll, pourFaults } from './poured-so-far';

/** What goes to `POST /api/v1/mix/finish`, as text. */
export type FinishBody = {
  commandId: string;
  shop: string;
  recipe: string;
  planned: { program: string; on: string } | null;
  benches: string[];
  plants: string | null;
  startedAt: string;
  endedAt: string;
  mixedAt: string | null;
  sprayed: string;
  by: string | null;
  poured: {
    product: string;
    from: { lotId: string; place: number; amount: string; heldMore: boolean; ranOut?: boolean }[];
    elsewhere: string | null;
  }[];
  leftover: string | null;
  leftoverWent: string | null;
  temperatureC: number | null;
  conditions: string | null;
  pH: number | null;
  acid: string | null;
  passed: { rule: string; reason: string }[];
  plannedCost: string | null;
};

/** Something that stands in the way of finishing: what, in which field, and on which screen it is put right. */
export type FinishFault = Fault & { screen: string };

/** What the mix comes to as the shop takes it, or everything that stands in the way, each with its screen. */
export type Finishing = { ok: true; body: FinishBody } | { ok: false; faults: FinishFault[] };

/**
 * What is sent of a finished mix. It depends on what was noted alone, and not on when or how often somebody looked away.
 *
 * Refuses  a pour of a begun fill that is neither in the tank nor left out, or cannot be read; times, amounts, a temperature
 *          and a pH that cannot be read; no bench; a rule that says stop without a reason
 */
export function finishBodyOf(progress: MixProgress): Finishing {
  const faults = [...fillFaults(progress), ...acidFaults(progress), ...answerFaults(progress), ...stopFaults(progress)];
  const fills = fillsMixed(progress);
  const poured = pouredInAll(progress, fills);
  if (faults.length > 0 || !poured.ok) return { ok: false, faults };
  const { plan, answers, commandId, apart } = progress;
  const planned = apart ? null : (plan.planned ?? progress.turn);
  const { pH, acid } = acidityOf(progress);
  const text = (field: keyof typeof answers) => onOneLine(answers[field]).trim() || null;
  return {
    ok: true,
    body: {
      ...{ commandId, shop: plan.shopId, recipe: plan.recipe.id, planned },
      benches: [...new Set([...progress.benches, ...leftoverBenchesOf(progress)])],
      plants: text('plants'),
      startedAt: timeOf(progress, 'startedAt'),
      endedAt: timeOf(progress, 'endedAt'),
      mixedAt: mixedAtOf(progress),
      sprayed: sprayedText(progress),
      by: text('by'),
      poured: poured.value.map(({ product, from, elsewhere }) => ({
        product: product.id,
        from: from.map((one) => ({ ...one, amount: stockText(one.amount, product.form) })),
        elsewhere: elsewhere > 0 ? stockText(elsewhere, product.form) : null,
      })),
      ...{ leftover: text('leftover'), leftoverWent: leftoverWent(progress) },
      ...{ temperatureC: temperatureOf(progress), conditions: text('conditions') },
      ...{ pH, acid, passed: passedOf(progress) },
      plannedCost: plan.plannedCost === null ? null : `${plan.plannedCost / 1_000_000}`,
    },
  };
}

/** How many fills were mixed: all up to the last one that something was poured into. */
export function fillsMixed(progress: MixProgress): number {
  const last = Math.max(-1, ...progress.pours.filter(({ done }) => done).map(({ fill }) => fill));
  return Math.min(fillsOf(progress), Math.max(1, last + 1));
}

/** How much spray was mixed: what was typed, else as many fills as were poured. */
export const sprayedText = (progress: MixProgress): string =>
  progress.answers.sprayed.trim() || stockText(stock(progress.plan.fill * fillsMixed(progress)), 'liquid');

/** The rules that want a reason: those that the sheet named, and those that the shop asked about. */
export function stopsOf({ plan, asked }: MixProgress): { rule: string; messages: string[] }[] {
  const known = new Set(plan.stops.map(({ rule }) => rule));
  return [...plan.stops, ...asked.filter(({ rule }) => !known.has(rule))];
}

function fillFaults(progress: MixProgress): FinishFault[] {
  const faults: FinishFault[] = [];
  for (let fill = 0; fill < fillsMixed(progress); fill += 1) {
    for (const product of productsOf(progress)) faults.push(...productFaults(progress, fill, product));
  }
  return faults;
}

function productFaults(progress: MixProgress, fill: number, product: string): FinishFault[] {
  const { plan } = progress;
  const pour = pourIn(progress, fill, product);
  const its = { path: `poured.${product}`, screen: pourKey(fill, product) };
  const name = `${productIn(plan, product).name}${plan.fills > 1 ? `, fill ${fill + 1}` : ''}`;
  if (!pour?.done) return [{ ...its, message: `${name}: neither poured nor left out. Say which.` }];
  if (isUnexplained(progress, pour)) return [{ ...its, message: `${name}: write why it was left out.` }];
  return pourFaults(progress, fill, product, pour.parts).map(({ message }) => ({
    ...its,
    message: `${name}: ${message}`,
  }));
}

/** What a record has a reason under, for a product that was left out because it could not be measured. */
export const LEFT_OUT = 'left-out';

/** Characters of such a reason: with the name of the product before it, it has to fit into a record. */
export const LONGEST_LEFT_OUT = 290;

/** Where a reason is kept for leaving a product out. */
export const leftOutKey = (product: string): string => `${LEFT_OUT} ${product}`;

const reasonLeftOut = ({ reasons }: MixProgress, product: string): string =>
  onOneLine(reasons[leftOutKey(product)] ?? '').trim();

/** Whether a product that cannot be measured was left out, and nobody has said why. */
export const isUnexplained = (progress: MixProgress, { product, parts, done }: Pour): boolean =>
  done && parts.length === 0 && isFarOff(progress, product) && reasonLeftOut(progress, product) === '';

const isFarOff = (progress: MixProgress, product: string): boolean =>
  (plannedPour(progress, product)?.farOff ?? null) !== null;

function acidFaults(progress: MixProgress): FinishFault[] {
  const { plan } = progress;
  const acids = progress.acids.flatMap(({ fill, product, first, more }): FinishFault[] =>
    [first, more].flatMap((text, at): FinishFault[] => {
      const reading = text.trim() === '' ? null : readStock(text, productIn(plan, product));
      if (!reading || reading.ok) return [];
      return [{ path: 'acid', screen: `${at === 0 ? 'acid' : 'meter'} ${fill}`, message: reading.message }];
    }),
  );
  const readings = progress.readings.flatMap(({ fill, pH }): FinishFault[] =>
    isPh(pH)
      ? []
      : [
          {
            path: 'pH',
            screen: `meter ${fill}`,
            message: `"${pH}" is no pH. Write a number from 0 to 14, such as 6.2.`,
          },
        ],
  );
  return [...acids, ...readings];
}

const isPh = (text: string): boolean => text.trim() === '' || pHOf(text) !== null;

/** A pH as somebody read it off a meter. Null when it is none. */
export function pHOf(text: string): number | null {
  const plain = text.trim().replace(',', '.');
  return /^\d{1,2}(\.\d{1,4})?$/.test(plain) && Number(plain) <= 14 ? Number(plain) : null;
}

function answerFaults(progress: MixProgress): FinishFault[] {
  const { answers, benches, plan } = progress;
  const of = (path: string, message: string): FinishFault => ({ path, message, screen: 'finish' });
  const times = (['startedAt', 'endedAt'] as const).flatMap((field) => {
    const reading = readLocalTime(answers[field], plan.zone);
    if (reading.ok) return [];
    const asked = field === 'startedAt' ? 'Write when spraying began.' : 'Write when the last plant was sprayed.';
    return [of(field, answers[field].trim() === '' ? asked : reading.message)];
  });
  const volumes = (['sprayed', 'leftover'] as const).flatMap((field) => {
    const reading = answers[field].trim() === '' ? null : readVolume(answers[field]);
    return reading && !reading.ok ? [of(field, reading.message)] : [];
  });
  const warmth = readCelsius(answers.temperature, plan.units);
  const left = answers.leftover.trim() !== '' && !leftoverWent(progress);
  return [
    ...times,
    ...volumes,
    ...(warmth.ok ? [] : [of('temperature', warmth.message)]),
    ...(left ? [of('leftoverWent', 'Say what became of the spray that was left over.')] : []),
    ...(benches.length === 0 ? [of('benches', 'Name at least one bench that was sprayed.')] : []),
  ];
}

const stopFaults = (progress: MixProgress): FinishFault[] =>
  stopsOf(progress)
    .filter(({ rule }) => (progress.reasons[rule] ?? '').trim() === '')
    .map(({ rule }) => ({
      path: `passed.${rule}`,
      message: 'Write why it was sprayed all the same; it goes into the record.',
      screen: 'finish',
    }));

/** A time as it was typed. The moment of the tap itself where it still says so: a time can come twice, a moment cannot. */
function timeOf(progress: MixProgress, field: 'startedAt' | 'endedAt'): string {
  const { answers, plan, sprayingSince, sprayingUntil } = progress;
  const tapped = field === 'startedAt' ? sprayingSince : sprayingUntil;
  const text = answers[field];
  if (tapped !== null && localTimeText(instantOf(tapped), plan.zone) === text) {
    return instantText(instantOf(tapped), plan.zone);
  }
  const reading = readLocalTime(text, plan.zone);
  return reading.ok ? instantText(reading.value, plan.zone) : text;
}

function temperatureOf({ answers, plan }: MixProgress): number | null {
  const reading = readCelsius(answers.temperature, plan.units);
  return reading.ok ? reading.value : null;
}

/** When the first fill was mixed, as the use-within time counts from it. */
function mixedAtOf({ mixedSince, plan }: MixProgress): string | null {
  return mixedSince.length === 0
    ? null
    : instantText(instantOf(Math.min(...mixedSince.map(({ at }) => at))), plan.zone);
}

/** A bench that took what was left over was sprayed, and closes like the others. */
const leftoverBenchesOf = ({ answers, leftoverBenches }: MixProgress): string[] =>
  answers.leftover.trim() === '' ? [] : leftoverBenches;

function leftoverWent(progress: MixProgress): string | null {
  const { plan, answers } = progress;
  if (answers.leftover.trim() === '') return null;
  const names = plan.shopBenches.filter(({ id }) => progress.leftoverBenches.includes(id)).map(({ name }) => name);
  const words = [names.length > 0 ? `sprayed on ${names.join(', ')}` : '', onOneLine(answers.leftoverWent).trim()];
  return words.filter((part) => part !== '').join('; ') || null;
}

/** The last pH that was read, and the acid that brought it there. */
function acidityOf(progress: MixProgress): { pH: number | null; acid: string | null } {
  const fills = fillsMixed(progress);
  const last = progress.readings
    .filter(({ fill, pH }) => fill < fills && pHOf(pH) !== null)
    .reduce<{ fill: number; pH: string } | null>(
      (latest, one) => (latest && latest.fill > one.fill ? latest : one),
      null,
    );
  const acid = progress.acids
    .filter(({ fill, first, more }) => fill < fills && `${first}${more}`.trim() !== '')
    .map(({ product }) => product);
  // Several acids share in one pH, and then no reading says anything about any of them.
  const { ownAcid } = progress.plan;
  const poured = new Set(ownAcid !== null && isPoured(progress, ownAcid) ? [ownAcid, ...acid] : acid);
  const [only = null] = poured.size === 1 ? poured : [];
  return { pH: last ? pHOf(last.pH) : null, acid: only };
}

const isPoured = ({ pours }: MixProgress, product: string): boolean =>
  pours.some((pour) => pour.product === product && pour.done && pour.parts.length > 0);

/** What said stop and was passed, and what the sheet said not to pour and was left out. */
const passedOf = (progress: MixProgress): FinishBody['passed'] => [
  ...stopsOf(progress).map(({ rule }) => ({ rule, reason: onOneLine(progress.reasons[rule] ?? '').trim() })),
  ...leftOutOf(progress),
];

function leftOutOf(progress: MixProgress): FinishBody['passed'] {
  const fills = fillsMixed(progress);
  const left = progress.pours.filter(({ fill, done, parts }) => fill < fills && done && parts.length === 0);
  return [...new Set(left.map(({ product }) => product))]
    .filter((product) => isFarOff(progress, product))
    .map((product) => ({
      rule: LEFT_OUT,
      reason: `${productIn(progress.plan, product).name}: ${reasonLeftOut(progress, product)}`,
    }));
}
