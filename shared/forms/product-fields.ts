import { plainSubstance } from '../measure/substance-written';
import type { ShopFile, Written } from '../shop-file/contract';
import { plainDays, plainHours, plainShelfLife } from '../time/time-written';
import { readCelsius, warmthTyped } from './celsius';
import { type Fields, writtenRows } from './rows';

export type FileProduct = ShopFile['products'][number];
export type WrittenProduct = Written<'products'>;
type Units = ShopFile['shop']['units'];

/*
 * A product as the flat fields of a form, and back. A field is named after its place in the product, so that a fault in
 * the product stands beside the field that it came from. Lists of words are one a line, since a word may hold a comma.
 */

/** Fields of one line of text or number, by their place in the product. */
export const TEXT_FIELDS = [
  ...[
    'name',
    'kind',
    'form',
    'formulation',
    'label.signalWord',
    'label.registration',
    'label.firstAid',
    'label.storage',
  ],
] as const;
export const NUMBER_FIELDS = [
  ...['densityGPerMl', 'gramsPerTeaspoon', 'mixOrder', 'shelfLife.unopenedDays', 'shelfLife.openedDays'],
  ...['label.reiHours', 'label.phiDays', 'label.maxApplicationsPerYear', 'label.minDaysBetween'],
  ...['label.sprayPh.min', 'label.sprayPh.max', 'label.hotAboveC'],
] as const;
export const LIST_FIELDS = ['label.modes', 'label.protectiveEquipment', 'label.doNotMixWith', 'gtins'] as const;
export const YES_NO_FIELDS = ['alkaliSilicate', 'archived'] as const;

/** What repeats, with the parts of one line. Whatever has none of the parts in `told` written is a blank line. */
export const ROWS = {
  contents: { parts: ['.substance', '.amount', '.basis'], told: ['.substance', '.amount'] },
  'label.rates': { parts: ['.use', '.min', '.max'], told: ['.use', '.min', '.max'] },
  madeFrom: { parts: ['.product', '.dose'], told: ['.product', '.dose'] },
} as const;
export type RowList = keyof typeof ROWS;

/** The lines of a list that say something. Their order is the order in the product. */
export const toldRows = (fields: Fields, list: RowList): number[] => writtenRows(fields, list, ROWS[list].told);

/**
 * The product that a form says, to be judged as a part of the shop file.
 *
 * Takes    the fields as they were typed; the id that the product has or is to have; the units of the shop, in which a
 *          temperature without a letter is
 * Gives    what was left empty as unknown; a number that cannot be read stays the text that it is, so that the shop
 *          file's own sentence says what to write instead
 */
export function productOfForm(fields: Fields, id: string, units: Units): WrittenProduct {
  const text = (name: string) => textOf(fields[name]);
  const number = (name: string) => numberOf(fields[name]);
  const keeps = (name: string) => numberOf(plainShelfLife(fields[name] ?? ''));
  const product = {
    id,
    name: (fields.name ?? '').trim(),
    kind: text('kind') ?? undefined,
    form: text('form') ?? undefined,
    formulation: text('formulation'),
    densityGPerMl: number('densityGPerMl'),
    gramsPerTeaspoon: number('gramsPerTeaspoon'),
    contents: toldRows(fields, 'contents').map((row) => contentOf(fields, `contents[${row}]`)),
    label: labelOf(fields, units),
    shelfLife: { unopenedDays: keeps('shelfLife.unopenedDays'), openedDays: keeps('shelfLife.openedDays') },
    mixOrder: number('mixOrder'),
    alkaliSilicate: text('alkaliSilicate') === YES,
    gtins: linesOf(fields.gtins).map((line) => line.replace(/[\s-]/g, '') || line),
    madeFrom: toldRows(fields, 'madeFrom').map((row) => sourceOf(fields, `madeFrom[${row}]`)),
    archived: text('archived') === YES,
  };
  // What was typed may be anything; the shop file's parser is what says whether it is a product.
  return product as WrittenProduct;
}

/** The fields of a form that says this product: what `productOfForm` reads back as it is, in the units of the shop. */
export function formOfProduct(product: FileProduct, units: Units): Record<string, string> {
  const { label, shelfLife } = product;
  const words: Record<string, string | null> = {
    ...{ name: product.name, kind: product.kind, form: product.form, formulation: product.formulation },
    'label.signalWord': label.signalWord,
    'label.registration': label.registration,
    'label.firstAid': label.firstAid,
    'label.storage': label.storage,
    'label.modes': label.modes.join('\n'),
    'label.protectiveEquipment': label.protectiveEquipment.join('\n'),
    'label.doNotMixWith': label.doNotMixWith.join('\n'),
    gtins: product.gtins.join('\n'),
    alkaliSilicate: product.alkaliSilicate ? YES : NO,
    archived: product.archived ? YES : NO,
  };
  const numbers: Record<string, number | string | null | undefined> = {
    ...{ densityGPerMl: product.densityGPerMl, gramsPerTeaspoon: product.gramsPerTeaspoon, mixOrder: product.mixOrder },
    'shelfLife.unopenedDays': shelfLife.unopenedDays,
    'shelfLife.openedDays': shelfLife.openedDays,
    'label.reiHours': label.reiHours,
    'label.phiDays': label.phiDays,
    'label.maxApplicationsPerYear': label.maxApplicationsPerYear,
    'label.minDaysBetween': label.minDaysBetween,
    'label.sprayPh.min': label.sprayPh?.min,
    'label.sprayPh.max': label.sprayPh?.max,
    'label.hotAboveC': warmthTyped(label.hotAboveC, units),
  };
  const written = Object.entries({ ...words, ...numbers }).map(([name, value]) => [name, String(value ?? '')]);
  return { ...Object.fromEntries(written), ...rowFields(product) };
}

export const YES = 'yes';
export const NO = 'no';

function rowFields({ contents, label, madeFrom }: FileProduct): Record<string, string> {
  const fields: Record<string, string> = {};
  for (const [row, { substance, amount, basis }] of contents.entries()) {
    fields[`contents[${row}].substance`] = substance;
    fields[`contents[${row}].amount`] = String(amount);
    fields[`contents[${row}].basis`] = basis;
  }
  for (const [row, { use, min, max }] of label.rates.entries()) {
    fields[`label.rates[${row}].use`] = use;
    fields[`label.rates[${row}].min`] = min ?? '';
    fields[`label.rates[${row}].max`] = max ?? '';
  }
  for (const [row, { product, dose }] of madeFrom.entries()) {
    fields[`madeFrom[${row}].product`] = product;
    fields[`madeFrom[${row}].dose`] = dose;
  }
  return fields;
}

function labelOf(fields: Fields, units: Units) {
  const number = (name: string) => numberOf(fields[`label.${name}`]);
  const [min, max] = [number('sprayPh.min'), number('sprayPh.max')];
  return {
    rates: toldRows(fields, 'label.rates').map((row) => rateOf(fields, `label.rates[${row}]`)),
    reiHours: numberOf(plainHours(fields['label.reiHours'] ?? '')),
    phiDays: numberOf(plainDays(fields['label.phiDays'] ?? '')),
    maxApplicationsPerYear: number('maxApplicationsPerYear'),
    minDaysBetween: numberOf(plainDays(fields['label.minDaysBetween'] ?? '')),
    modes: linesOf(fields['label.modes']),
    signalWord: textOf(fields['label.signalWord']),
    protectiveEquipment: linesOf(fields['label.protectiveEquipment']),
    // One end of a range is not a range; the end that is missing is asked for.
    sprayPh: min === null && max === null ? null : { min: min ?? undefined, max: max ?? undefined },
    doNotMixWith: linesOf(fields['label.doNotMixWith']),
    registration: textOf(fields['label.registration']),
    hotAboveC: warmthOf(fields['label.hotAboveC'] ?? '', units),
    firstAid: textOf(fields['label.firstAid']),
    storage: textOf(fields['label.storage']),
  };
}

function warmthOf(typed: string, units: Units): number | string | null {
  const reading = readCelsius(typed, units);
  return reading.ok ? reading.value : typed;
}

const contentOf = (fields: Fields, row: string) => ({
  substance: plainSubstance(fields[`${row}.substance`] ?? '', fields.kind?.trim() === 'nutrient'),
  amount: numberOf(fields[`${row}.amount`]) ?? undefined,
  basis: textOf(fields[`${row}.basis`]) ?? undefined,
});

const rateOf = (fields: Fields, row: string) => ({
  use: (fields[`${row}.use`] ?? '').trim(),
  min: textOf(fields[`${row}.min`]),
  max: textOf(fields[`${row}.max`]),
});

const sourceOf = (fields: Fields, row: string) => ({
  product: (fields[`${row}.product`] ?? '').trim(),
  dose: textOf(fields[`${row}.dose`]) ?? undefined,
});

const textOf = (typed: string | undefined): string | null => typed?.trim() || null;

const linesOf = (typed: string | undefined): string[] =>
  (typed ?? '')
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '');

const NUMBER = /^-?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;

/** A number, or the text that is none. */
function numberOf(typed: string | undefined): number | string | null {
  const text = textOf(typed);
  const isNumber = text !== null && NUMBER.test(text) && Number.isFinite(Number(text));
  return isNumber ? Number(text) : text;
}
