import { instantOf } from '../time/instant';
import { localTimeText, readLocalTime } from '../time/local-time';
import { bottleKey } from './mix-plan';
import type { AcidPour, Answer, MixProgress, Part, Pour } from './mix-progress';
import { fillsOf, keyBeside, productsOf, screenAt, screensOf } from './mix-screens';
import { partsAsPlanned } from './poured-so-far';

/** What somebody does in the course of a mix. Each names what it is about, so that doing it twice is doing it once. */
export type MixAction =
  | { do: 'go'; to: string }
  | { do: 'next'; from: string }
  | { do: 'back'; from: string }
  | { do: 'tick'; what: string; on: boolean }
  /** What is poured differs from the sheet; it is not in the tank yet. */
  | { do: 'change'; fill: number; product: string; parts: Part[] }
  /** It is in the tank, as the sheet has it or as it was changed. */
  | { do: 'poured'; fill: number; product: string }
  | { do: 'left-out'; fill: number; product: string }
  | { do: 'as-planned'; fill: number; product: string }
  /** One product more, from this fill on. */
  | { do: 'add'; fill: number; product: string }
  | { do: 'take-back'; product: string }
  | { do: 'choose'; product: string; bottle: { lotId: string; place: number } }
  | { do: 'acid'; pour: AcidPour }
  | { do: 'reading'; fill: number; pH: string }
  /** The fills after this one went in the same. */
  | { do: 'same-again'; fill: number }
  /** There were no more fills than up to this one. */
  | { do: 'no-more'; fill: number }
  | { do: 'all-fills' }
  /** The first product went into a fill. */
  | { do: 'mixing'; fill: number; at: number }
  /** By the shop's clock; `ahead` is by how much the device's was ahead of it. */
  | { do: 'spraying'; since: number; ahead?: number | null }
  /** The last plant is sprayed. Said again, the latest end counts. */
  | { do: 'sprayed'; until: number; ahead?: number | null }
  /** The shop has taken in what it was told of the spraying. */
  | { do: 'told'; what: string }
  | { do: 'answer'; field: Answer; text: string }
  | { do: 'reason'; rule: string; text: string }
  /** Rules that say stop as things stand now. */
  | { do: 'ask'; stops: MixProgress['asked'] }
  | { do: 'benches' | 'leftover-benches'; ids: string[] }
  | { do: 'apart' }
  /** Which planned spraying it was; null: none of them. */
  | { do: 'turn'; turn: MixProgress['turn'] }
  | { do: 'finish' }
  /** It may open a bench earlier, and this is how the person knows. It is sent again with that. */
  | { do: 'sure'; token: string; reason: string }
  | { do: 'correct' }
  | ({ do: 'refused' } & Refused)
  | { do: 'sent'; application: string | null };

type Refused = {
  code: string | null;
  message: string;
  faults: { path: string; message: string }[];
  /** With 'opens-earlier': what the answer has to name. */
  confirm?: string | undefined;
};

/**
 * A mix after one more thing was done.
 *
 * Gives    the same mix for what cannot be done any more: once it is sent nothing changes, and while it waits to be sent
 *          only what becomes of that
 */
export function afterwards(progress: MixProgress, action: MixAction): MixProgress {
  if (progress.state === 'sent') return progress;
  if (action.do === 'sent') {
    return { ...progress, state: 'sent', refusal: null, finished: { application: action.application } };
  }
  if (action.do === 'told') return { ...progress, told: action.what };
  if (progress.state === 'to-send') return whileWaiting(progress, action);
  return changed(progress, action);
}

function whileWaiting(progress: MixProgress, action: MixAction): MixProgress {
  if (action.do === 'correct') return { ...progress, state: 'mixing' };
  if (action.do !== 'refused') return progress;
  const { code, message, faults, confirm = null } = action;
  const asked = faults.flatMap(({ path, message: told }) => {
    const rule = /^passed\.([a-z-]+)$/.exec(path)?.[1];
    return rule === undefined ? [] : [{ rule, messages: [told] }];
  });
  return {
    ...progress,
    ...{ state: 'mixing', at: 'finish', refusal: { code, message, faults, confirm }, sure: null },
    asked: asking(progress.asked, asked),
  };
}

/** What is asked about now, in place of what was asked about the same rules before. */
function asking(before: MixProgress['asked'], stops: MixProgress['asked']): MixProgress['asked'] {
  const known = new Set(stops.map(({ rule }) => rule));
  return [...before.filter(({ rule }) => !known.has(rule)), ...stops];
}

function changed(progress: MixProgress, action: MixAction): MixProgress {
  switch (action.do) {
    case 'go':
      return at(progress, action.to);
    case 'next':
    case 'back':
      // A tap that comes late, or twice, is about the screen that it was meant for.
      return progress.at === action.from
        ? { ...progress, at: keyBeside(progress, action.do === 'next' ? 1 : -1) }
        : progress;
    case 'tick':
      return { ...progress, ticked: toggled(progress.ticked, action.what, action.on) };
    case 'answer':
      return { ...progress, answers: { ...progress.answers, [action.field]: action.text } };
    case 'reason':
      return { ...progress, reasons: { ...progress.reasons, [action.rule]: action.text } };
    case 'benches':
      return { ...progress, benches: action.ids };
    case 'leftover-benches':
      return { ...progress, leftoverBenches: action.ids };
    case 'turn':
      return { ...progress, turn: action.turn };
    case 'apart':
      return { ...progress, apart: true, refusal: null };
    case 'finish':
      return { ...progress, state: 'to-send', refusal: null };
    case 'sure':
      return { ...progress, state: 'to-send', refusal: null, sure: { token: action.token, reason: action.reason } };
    case 'mixing':
      return progress.mixedSince.some(({ fill }) => fill === action.fill)
        ? progress
        : { ...progress, mixedSince: [...progress.mixedSince, { fill: action.fill, at: action.at }] };
    case 'spraying':
      return progress.sprayingSince === null ? timed(progress, 'startedAt', action.since, action.ahead) : progress;
    case 'sprayed':
      return ended(progress, action);
    default:
      return pouring(progress, action);
  }
}

function pouring(progress: MixProgress, action: MixAction): MixProgress {
  switch (action.do) {
    case 'change':
      return noted(progress, { fill: action.fill, product: action.product, parts: action.parts, done: false });
    case 'poured':
      return noted(progress, pouredNow(progress, action));
    case 'left-out':
      return noted(progress, { fill: action.fill, product: action.product, parts: [], done: true });
    case 'as-planned':
      return { ...progress, pours: progress.pours.filter((pour) => !isOf(pour, action)) };
    case 'add':
      return added(progress, action);
    case 'take-back':
      return takenBack(progress, action.product);
    case 'choose':
      return chosen(progress, action);
    case 'acid':
      return {
        ...progress,
        acids: [...progress.acids.filter(({ fill }) => fill !== action.pour.fill), action.pour],
      };
    case 'reading':
      return { ...progress, readings: replaced(progress.readings, { fill: action.fill, pH: action.pH }) };
    case 'same-again':
      return sameAgain(progress, action.fill);
    case 'no-more':
      return { ...progress, lastFill: action.fill, at: 'finish' };
    case 'all-fills':
      return { ...progress, lastFill: null };
    case 'ask':
      return { ...progress, asked: asking(progress.asked, action.stops) };
    default:
      return progress;
  }
}

const at = (progress: MixProgress, to: string): MixProgress =>
  screensOf(progress).some(({ key }) => key === to) ? { ...progress, at: to } : progress;

const toggled = (ticked: string[], what: string, on: boolean): string[] =>
  on === ticked.includes(what) ? ticked : on ? [...ticked, what] : ticked.filter((one) => one !== what);

const isOf = (pour: { fill: number; product: string }, other: { fill: number; product: string }): boolean =>
  pour.fill === other.fill && pour.product === other.product;

const noted = (progress: MixProgress, pour: Pour): MixProgress => ({
  ...progress,
  pours: [...progress.pours.filter((one) => !isOf(one, pour)), pour],
});

function pouredNow(progress: MixProgress, { fill, product }: { fill: number; product: string }): Pour {
  const before = progress.pours.find((pour) => isOf(pour, { fill, product }));
  const parts = before && before.parts.length > 0 ? before.parts : partsAsPlanned(progress, fill, product);
  // Nobody knows how much it is, and nobody said: it is not in the tank.
  return { fill, product, parts, done: parts.length > 0 };
}

/** The fills before it went without, and nobody has to say so of each. */
function added(progress: MixProgress, { fill, product }: { fill: number; product: string }): MixProgress {
  if (productsOf(progress).includes(product)) return progress;
  let without = { ...progress, added: [...progress.added, product] };
  for (let earlier = 0; earlier < fill; earlier += 1) {
    without = noted(without, { fill: earlier, product, parts: [], done: true });
  }
  return without;
}

const takenBack = (progress: MixProgress, product: string): MixProgress =>
  progress.added.includes(product)
    ? {
        ...progress,
        added: progress.added.filter((one) => one !== product),
        pours: progress.pours.filter((pour) => pour.product !== product),
        at: screenAt(progress).key.endsWith(` ${product}`) ? keyBeside(progress, -1) : progress.at,
      }
    : progress;

function chosen(
  progress: MixProgress,
  { product, bottle }: { product: string; bottle: { lotId: string; place: number } },
) {
  const others = (progress.chosen[product] ?? []).filter((one) => bottleKey(one) !== bottleKey(bottle));
  return { ...progress, chosen: { ...progress.chosen, [product]: [bottle, ...others] } };
}

const replaced = <T extends { fill: number }>(all: T[], one: T): T[] => [
  ...all.filter(({ fill }) => fill !== one.fill),
  one,
];

/** Every later fill gets the same amounts, out of the bottles whose turn it then is where the first went as planned. */
function sameAgain(progress: MixProgress, fill: number): MixProgress {
  let copied = progress;
  for (let later = fill + 1; later < fillsOf(progress); later += 1) {
    for (const pour of progress.pours.filter((one) => one.fill === fill && one.done)) {
      const asPlanned = JSON.stringify(pour.parts) === JSON.stringify(partsAsPlanned(progress, fill, pour.product));
      const parts = asPlanned ? partsAsPlanned(copied, later, pour.product) : pour.parts;
      copied = noted(copied, { ...pour, fill: later, parts });
    }
    const acid = progress.acids.find((one) => one.fill === fill);
    if (acid) copied = { ...copied, acids: replaced(copied.acids, { ...acid, fill: later }) };
  }
  return { ...copied, at: 'finish' };
}

/** The latest end counts. */
const ended = (progress: MixProgress, { until, ahead }: Extract<MixAction, { do: 'sprayed' }>): MixProgress =>
  until > (progress.sprayingUntil ?? 0) ? timed(progress, 'endedAt', until, ahead) : progress;

/** The moment of the tap, and its time as a field has it. A time that somebody typed stays, unless an end is later. */
function timed(
  progress: MixProgress,
  field: 'startedAt' | 'endedAt',
  moment: number,
  ahead: number | null = null,
): MixProgress {
  const { answers } = progress;
  const tapped = field === 'startedAt' ? { sprayingSince: moment } : { sprayingUntil: moment };
  const text = isLeft(progress, field, moment) ? answers[field] : localTimeText(instantOf(moment), progress.plan.zone);
  const deviceAhead = progress.deviceAhead ?? ahead;
  return { ...progress, ...tapped, deviceAhead, answers: { ...answers, [field]: text } };
}

function isLeft({ answers, plan }: MixProgress, field: 'startedAt' | 'endedAt', moment: number): boolean {
  if (answers[field] === '') return false;
  const typed = readLocalTime(answers[field], plan.zone);
  return field === 'startedAt' || !typed.ok || typed.value >= moment;
}
