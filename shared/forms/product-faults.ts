import type { Fault } from '../outcome';
import { LIST_FIELDS, ROWS, type RowList, toldRows } from './product-fields';
import type { Fields } from './rows';

/** Names of the shop that a fault outside the product needs: what is there under its number. */
export type Elsewhere = { recipes: readonly { name: string }[]; wasForm: string | null };

/**
 * The faults of a product, each beside the field of the form that it came from.
 *
 * Takes    faults with their paths in the part of the shop file that was sent, the fields of the form, and what the
 *          faults elsewhere in the shop speak of
 * Gives    the parser's own sentences. Whatever the shop holds that the product no longer fits stands beside what
 *          has to stay as it was
 */
export function faultsInForm(faults: readonly Fault[], fields: Fields, elsewhere: Elsewhere): Fault[] {
  return faults.map(({ path, message }) => {
    const inside = PRODUCT.exec(path)?.[1];
    if (inside !== undefined) return { path: fieldOf(inside, fields), message: inWords(message) };
    return { path: outsideField(path, fields, elsewhere), message: `${whereOf(path, elsewhere)}${inWords(message)}` };
  });
}

const PRODUCT = /^products\[0\]\.?(.*)$/;

/** The field that holds a place of the product. */
function fieldOf(place: string, fields: Fields): string {
  if (place === '' || place === 'id') return 'name';
  const list = LIST_FIELDS.find((name) => place === name || place.startsWith(`${name}[`));
  if (list) return list;
  for (const name of Object.keys(ROWS) as RowList[]) {
    const told = place.startsWith(`${name}[`) ? /^\[(\d+)\](.*)$/.exec(place.slice(name.length)) : null;
    if (!told) continue;
    const row = toldRows(fields, name)[Number(told[1])] ?? 0;
    return `${name}[${row}]${told[2] || FIRST_PART[name]}`;
  }
  return place === 'label.sprayPh' ? 'label.sprayPh.min' : place;
}

/** Where a fault about a whole line is told: where it can be put right. */
const FIRST_PART: Record<RowList, string> = { contents: '.substance', 'label.rates': '.min', madeFrom: '.dose' };

/** A recipe or a pack that the changed product no longer fits names what was changed too far. */
function outsideField(path: string, fields: Fields, { wasForm }: Elsewhere): string {
  if (wasForm !== null && fields.form !== wasForm) return 'form';
  if (/^recipes\[/.test(path)) return 'contents[0].substance';
  return fields.form === 'powder' ? 'gramsPerTeaspoon' : 'densityGPerMl';
}

function whereOf(path: string, { recipes }: Elsewhere): string {
  const recipe = /^recipes\[(\d+)\]/.exec(path)?.[1];
  if (recipe !== undefined) return `Recipe ${recipes[Number(recipe)]?.name ?? recipe} needs it as it was. `;
  return '';
}

/** The sentences are made for a file in an editor; in a form nobody writes quotes, nulls or brackets. */
const inWords = (message: string): string =>
  message
    .replaceAll(' in quotes', '')
    .replaceAll('; null when it is unknown', '; leave it empty when it is unknown')
    .replaceAll('(null)', '(not known)')
    .replaceAll('into min.', 'into the first.')
    .replace(/products\[\d+\]\.contents/g, 'its contents')
    .replace(/products\[\d+\]\.densityGPerMl/g, 'its density')
    .replace(/products\[\d+\]\.gramsPerTeaspoon/g, 'its grams per teaspoon');
