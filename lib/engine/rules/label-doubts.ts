import { showMinutes } from '@/shared/measure/show';
import type { Minutes } from '@/shared/quantity/amounts';
import { minutesUp } from '@/shared/time/hours';
import { modeGroupsIn } from '../rotation/mode-group';
import { classifiedModes } from '../rotation/published-modes';
import type { Product, ProductKind } from '../shop';

/**
 * What in a typed-in label is unlike what labels usually say, so that somebody reads the label once more. The label is
 * right where it differs; none of this is counted anywhere, and nothing that is missing is filled in.
 *
 * Gives   whole sentences; none where nothing is unusual
 */
export const labelDoubts = (product: Product): string[] => [
  ...intervalDoubt(product),
  ...modeDoubt(product),
  ...schemeDoubt(product),
  ...shelfLifeDoubt(product),
];

/**
 * The interval that a label has where nothing else was decided for the product, by the gravest word on it.
 *
 * Gives   null for a word that none is set for, and without a word
 * Source  40 CFR 156.208(c)(2), by toxicity category: I 48 h, II 24 h, III and IV 12 h; 40 CFR 156.64 for the words of the
 *         categories, DANGER, WARNING and CAUTION. Some products of the lowest categories have 4 h (60 FR 21965)
 */
export function usualInterval(signalWord: string | null): Minutes | null {
  const found = USUAL_HOURS.find(([word]) => word.test(signalWord ?? ''));
  return found ? minutesUp(found[1]) : null;
}

const USUAL_HOURS: [word: RegExp, hours: number][] = [
  [/danger|poison/i, 48],
  [/warning/i, 24],
  [/caution/i, 12],
];
const REDUCED = minutesUp(4);

/** What such intervals are set for. */
const AGAINST: ReadonlySet<ProductKind> = new Set(['insecticide', 'miticide', 'insecticide/miticide', 'fungicide']);

function intervalDoubt({ kind, label: { rei, signalWord } }: Product): string[] {
  if (!AGAINST.has(kind)) return [];
  const usual = usualInterval(signalWord);
  if (rei === null || usual === null || rei >= usual) return [];
  // Four hours are common on labels that only say caution.
  if (/caution/i.test(signalWord ?? '') && rei >= REDUCED) return [];
  return [
    `People keep out for ${showMinutes(rei)} is short for a label that says ${signalWord}: ${showMinutes(usual)} is usual. Read it again.`,
  ];
}

function modeDoubt({ name, kind, contents, label }: Product): string[] {
  const published = classifiedModes({ kind, contents });
  const texts = label.modes.filter((mode) => mode.trim() !== '');
  const entered = new Set(texts.flatMap((text) => modeGroupsIn(text, kind)).map(({ group }) => group));
  const isEntered = (mode: string) => modeGroupsIn(mode, kind).some(({ group }) => entered.has(group));
  if (published.length === 0 || published.some(isEntered)) return [];
  const groups = published.join(' and ');
  return texts.length === 0
    ? [`No mode of action is entered for ${name}; ${groups} is published for what is in it. Look on its label.`]
    : [
        `${label.modes.join(', ')} is entered for ${name}, and ${groups} is published for what is in it. Read it again.`,
      ];
}

/** A number without its scheme is compared with nothing but itself. */
const schemeDoubt = ({ name, kind, label }: Product): string[] =>
  label.modes
    .flatMap((text) => modeGroupsIn(text, kind))
    .filter(({ scheme, group }) => scheme === null && /^\d/.test(group))
    .map(({ text }) => `Write which scheme mode group ${text} of ${name} is from: IRAC, FRAC or HRAC.`);

/** Source: Penn State Extension, "Pesticide storage": from 2 to 8 years. Where sources differ, only the furthest is doubted. */
const LONGEST_YEARS = 8;
const LONGEST_DAYS = LONGEST_YEARS * 366;

function shelfLifeDoubt({ shelfLife: { unopenedDays, openedDays } }: Product): string[] {
  const days = Math.max(unopenedDays ?? 0, openedDays ?? 0);
  return days <= LONGEST_DAYS
    ? []
    : [`${days} days is long for it to keep: from 2 to ${LONGEST_YEARS} years is usual. Read it again.`];
}
