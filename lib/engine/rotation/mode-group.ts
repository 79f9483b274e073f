import type { Product, ProductKind } from '../shop';
import { withSources } from '../strength/sources';
import { HRAC_LETTERS, type Scheme, type Standing, standingOf, UNKNOWN_GROUP } from './mode-schemes';

/** A mode-of-action group as its scheme defines it, whichever way a label writes it. */
export type ModeGroup = {
  scheme: Scheme | null;
  /** The group without its sub-group: "IRAC 4", "FRAC M05", "5" where the scheme is not known. Two are one if this is. */
  group: string;
  /** With its sub-group: "IRAC 4A". What no scheme has is as it was typed. */
  text: string;
  standing: Standing;
};

/**
 * The mode-of-action groups that a text names.
 *
 * Takes   "IRAC 3A", "irac3a", "Group 3A insecticide", "3A", "FRAC M5", "IRAC 3A + 27"; and the kind of the product,
 *         which decides on the scheme where neither the text nor the form of the group does
 * Gives   nothing for what names no group: "none", "n/a", "unknown". What no scheme has is a group of its own
 */
export function modeGroupsIn(text: string, kind: ProductKind): ModeGroup[] {
  if (/^n\s*\/\s*a$/i.test(text.trim())) return [];
  let named: Scheme | null = null;
  return text.split(BETWEEN).flatMap((part) => {
    named = schemeNamed(part) ?? named;
    return modeGroup(part, named, kind) ?? [];
  });
}

/** The groups that a product brings, each once. A stock solution brings those of what it is made from. */
export function modesOf(product: Product): ModeGroup[] {
  const found = withSources(product).flatMap(({ kind, label }) =>
    label.modes.flatMap((text) => modeGroupsIn(text, kind)),
  );
  return found.filter(({ group }, at) => found.findIndex((one) => one.group === group) === at);
}

/** True when a second time in a row is a repetition at all. */
export const canRepeat = ({ standing }: Pick<ModeGroup, 'standing'>): boolean =>
  standing === 'counts' || standing === 'high risk';

/** How often in a row a group may come on a bench: one of high risk once, whatever the shop allows. */
export const mostInARow = ({ standing }: Pick<ModeGroup, 'standing'>, shopAllows: number): number => {
  if (!canRepeat({ standing })) return Number.POSITIVE_INFINITY;
  return standing === 'high risk' ? 1 : shopAllows;
};

const BETWEEN = /[,;/+&|]|\band\b/i;
const NONE = /^(none|not? (classified|applicable|grouped|known)|unclassified|unknown|n\.?a\.?|[-–—?.]+)?$/i;

/** What stands around a code: the scheme, what the product is for, and the word group. */
const AROUND =
  /\b(irac|frac|hrac|wssa|insecticides?|miticides?|acaricides?|fungicides?|bactericides?|herbicides?|resistance|mode of action|moa|groups?|codes?|no)\b\.?|(irac|frac|hrac|wssa)(?=\d|un|[mpu]\d|bm|nc)|[:#()]/gi;
const codeIn = (part: string): string => part.normalize('NFKC').replace(AROUND, ' ').trim();

const SCHEMES: [RegExp, Scheme][] = [
  [/irac/i, 'IRAC'],
  [/frac/i, 'FRAC'],
  [/hrac|wssa/i, 'HRAC'],
  [/insecticide|miticide|acaricide/i, 'IRAC'],
  [/fungicide|bactericide/i, 'FRAC'],
  [/herbicide/i, 'HRAC'],
];
const schemeNamed = (part: string): Scheme | null => SCHEMES.find(([words]) => words.test(part))?.[1] ?? null;

/** Some groups are in one scheme only. */
const FORMS: [RegExp, Scheme][] = [
  [/^(M|P|U|BM)\d+$|^\d+\.\d$|^NC$/, 'FRAC'],
  [/^(N-)?UN[A-Z]?$|^N-\d+[A-Z]?$/, 'IRAC'],
];

const KINDS: Partial<Record<ProductKind, Scheme>> = {
  insecticide: 'IRAC',
  miticide: 'IRAC',
  'insecticide/miticide': 'IRAC',
  fungicide: 'FRAC',
};

function modeGroup(part: string, named: Scheme | null, kind: ProductKind): ModeGroup | null {
  const typed = codeIn(part);
  const spoken = named && /^(unknown|not classified|unclassified)$/i.exec(typed);
  if (spoken) return written(named, inWords(named, spoken[0]));
  if (NONE.test(typed) || NONE.test(part.trim())) return null;
  const code = codeOf(typed);
  const form = code === null ? null : codeForm(code);
  const scheme = named ?? FORMS.find(([forms]) => forms.test(form?.code ?? ''))?.[1] ?? KINDS[kind] ?? null;
  if (form) return written(scheme, form);
  const text = part.trim();
  return { scheme, group: text.toLowerCase().replace(/\s+/g, ' '), text, standing: 'counts' };
}

/** What a scheme calls unknown or not classified, as its code. */
function inWords(scheme: Scheme, words: string): { group: string; code: string } {
  const code = scheme === 'FRAC' && !/unknown/i.test(words) ? 'NC' : UNKNOWN_GROUP[scheme];
  return { group: code, code };
}

/** The code among some words: all of them together ("3 A"), or else the first that has a number or is of UN ("3 DMI"). */
function codeOf(typed: string): string | null {
  const words = typed.toUpperCase().split(/\s+/);
  const together = words.join('');
  if (codeForm(together)) return together;
  return words.find((word) => /\d|^UN/.test(word) && codeForm(word)) ?? null;
}

function written(scheme: Scheme | null, form: { group: string; code: string }): ModeGroup {
  const before = scheme ? `${scheme} ` : '';
  const group = scheme === 'HRAC' ? (HRAC_LETTERS.get(form.group) ?? form.group) : form.group;
  const padded = (code: string) => (scheme === 'FRAC' ? code.replace(/^([A-Z]+)(\d)$/, '$10$2') : code);
  return {
    scheme,
    group: before + padded(group),
    text: before + padded(form.code),
    standing: standingOf(scheme, padded(group)),
  };
}

/** A code taken apart: "04A" is 4A of group 4, "16.1" is of group 16, "M05" is M5, "UNF" is of UN. Null for other text. */
function codeForm(code: string): { group: string; code: string } | null {
  const numbered = /^0*(\d{1,2})([A-Z]|\.\d)?$/.exec(code);
  if (numbered) return { group: String(numbered[1]), code: `${numbered[1]}${numbered[2] ?? ''}` };
  const nematicide = /^N-?0*(\d)([A-Z])?$/.exec(code);
  if (nematicide) return { group: `N-${nematicide[1]}`, code: `N-${nematicide[1]}${nematicide[2] ?? ''}` };
  if (code === 'NC') return { group: code, code };
  const unknown = /^(N-)?UN[A-Z]?$/.exec(code);
  if (unknown) return { group: `${unknown[1] ?? ''}UN`, code };
  const lettered = /^([A-Z]{1,2})-?0*(\d{1,2})$/.exec(code);
  if (lettered) return { group: `${lettered[1]}${lettered[2]}`, code: `${lettered[1]}${lettered[2]}` };
  return /^[A-Z]$/.test(code) ? { group: code, code } : null;
}
