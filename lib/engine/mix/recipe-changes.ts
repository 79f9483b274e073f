import { differences } from '../exchange/differences';
import { plain } from '../rules/in-words';

/** A version of a recipe, as it was typed. */
export type RecipeSaid = {
  name: string;
  targetPh: number | null;
  useWithinHours: number | null;
  ingredients: { product: string; dose: string; use: string | null; order: number | null }[];
};

/**
 * What one version of a recipe changed in the one before it, in words.
 *
 * Takes    both versions, and what each product is called
 * Gives    one short sentence for each change; none when they say the same
 */
export function recipeChanges(was: RecipeSaid, is: RecipeSaid, nameOf: (product: string) => string): string[] {
  return [
    ...(was.name === is.name ? [] : [`Called "${was.name}" before`]),
    ...changed('Target pH', was.targetPh, is.targetPh),
    ...changed('Use within', hours(was.useWithinHours), hours(is.useWithinHours)),
    ...lineChanges(was.ingredients, is.ingredients, nameOf),
    ...(isResorted(was, is) ? ['Lines in another order'] : []),
  ];
}

type Line = RecipeSaid['ingredients'][number];
type Said = string | number | null;

const hours = (number: number | null): string | null => (number === null ? null : `${number} h`);

function changed(what: string, was: Said, is: Said): string[] {
  if (was === is) return [];
  if (was === null) return [`${what}: ${is}`];
  return [is === null ? `${what} of ${was} taken out` : `${what} from ${was} to ${is}`];
}

function lineChanges(was: Line[], is: Line[], nameOf: (product: string) => string): string[] {
  const [before, after] = [inTurn(was), inTurn(is)];
  const sentences: string[] = [];
  for (const [key, line] of after) {
    const old = before.get(key);
    const name = nameOf(line.product);
    if (!old) sentences.push(`${name} added at ${line.dose}`);
    else sentences.push(...changed(name, old.dose, line.dose), ...ofLine(name, old, line));
  }
  for (const [key, line] of before) if (!after.has(key)) sentences.push(`${nameOf(line.product)} taken out`);
  return sentences;
}

const ofLine = (name: string, was: Line, is: Line): string[] => [
  ...(plain(was.use ?? '') === plain(is.use ?? '') ? [] : changed(`Use of ${name}`, was.use, is.use)),
  ...changed(`Place of ${name} in the mix`, was.order, is.order),
];

/** A product may stand on several lines: the first is compared with the first, the second with the second. */
function inTurn(lines: Line[]): Map<string, Line> {
  const found = new Map<string, Line>();
  for (const line of lines) {
    let turn = 0;
    while (found.has(JSON.stringify([line.product, turn]))) turn += 1;
    found.set(JSON.stringify([line.product, turn]), line);
  }
  return found;
}

/** Whether the same products stand in another order. */
function isResorted(was: RecipeSaid, is: RecipeSaid): boolean {
  const [before, after] = [was, is].map(({ ingredients }) => ingredients.map(({ product }) => product));
  if (!before || !after || differences(before, after).length === 0) return false;
  return differences(before.toSorted(), after.toSorted()).length === 0;
}
