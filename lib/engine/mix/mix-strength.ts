import { add, type Exact, exact, multiply, toNumber, ZERO } from '@/shared/quantity/exact';
import type { Content, Ingredient } from '../shop';
import { type Ground, ratePerMl } from '../strength/dose-in-stock';
import { asElement, asOxide } from '../strength/elements';
import { sameSubstance, strengthOf } from '../strength/strength-of';

/** What goes into a mix: a product and how much of it. A dose per area also needs the ground and the spray for it. */
export type Mixed = Pick<Ingredient, 'product' | 'dose'> & { ground?: Ground };

/** mg per litre of spray; null when something that brings it does so in an unknown amount. */
export type SubstanceStrength = { substance: string; mgPerL: number | null };
export type ElementStrength = {
  element: string;
  mgPerL: number | null;
  /** The same amount as the oxide that labels use; null for an element that labels state as it is. */
  oxide: { oxide: string; mgPerL: number | null } | null;
};

/**
 * How strong a mix is: every substance that its labels list, and every nutrient among them as element and as oxide.
 *
 *   mg of a substance per L of spray = Σ over the lines: rate (mL/L or g/L) × g of it per mL or g of product × 1000
 *
 * Several products may bring one substance, and one product may stand on several lines: their amounts add up. A label
 * that says one thing twice ("5 % P, which is 11.5 % P2O5") says it once: the first that can be worked out counts.
 *
 * Gives    both lists in the order in which the recipe and its labels first name each; a sum with an unknown part is null
 * Units    mg/L, unrounded
 * Source   domain arithmetic; the parts of the oxides are in strength/elements.ts
 */
export function mixStrength(mix: readonly Mixed[]): { strength: SubstanceStrength[]; elements: ElementStrength[] } {
  const [substances, elements] = [new Sums(), new Sums()];
  for (const line of mix) {
    for (const [substance, contents] of grouped(line.product.contents, ({ substance }) => substance)) {
      substances.add(substance, broughtBy(line, contents));
    }
    for (const [element, contents] of grouped(line.product.contents, nutrientOf)) {
      elements.add(element, elementBrought(line, contents));
    }
  }
  return {
    strength: substances.all().map(([substance, sum]) => ({ substance, mgPerL: sum && toNumber(sum) })),
    elements: elements.all().map(([element, sum]) => elementStrength(element, sum)),
  };
}

/**
 * How much of one substance a line brings.
 *
 * Takes    the line, and the contents of its product that name the substance, in the order of the label
 * Gives    mg per litre of spray by the first content for which it can be worked out, exact; null when there is none
 */
export function broughtBy(line: Mixed, contents: readonly Content[]): Exact | null {
  for (const content of contents) {
    const brought = inSpray(line, content);
    if (brought !== null) return brought;
  }
  return null;
}

/** A dose in ppm of the substance itself says how much of it there is, whatever is unknown about the product. */
function inSpray({ product, dose, ground }: Mixed, content: Content): Exact | null {
  if (dose.kind === 'substance' && sameSubstance(dose.substance, content.substance)) return dose.mgPerLitre;
  const [rate, strength] = [ratePerMl(dose, product, ground), strengthOf(content, product)];
  return rate && strength && multiply(multiply(rate, strength), exact(1000n));
}

function elementBrought(line: Mixed, contents: readonly Content[]): Exact | null {
  for (const content of contents) {
    const brought = broughtBy(line, [content]);
    if (brought !== null) return asElement(content.substance, brought)?.amount ?? null;
  }
  return null;
}

const nutrientOf = ({ substance }: Content): string | null => asElement(substance, ZERO)?.element ?? null;

/** Contents by what they name, leaving out those that name nothing of the kind. */
function grouped(contents: readonly Content[], nameOf: (content: Content) => string | null): [string, Content[]][] {
  const groups: [string, Content[]][] = [];
  for (const content of contents) {
    const name = nameOf(content);
    if (name === null) continue;
    const group = groups.find(([known]) => sameSubstance(known, name));
    if (group) group[1].push(content);
    else groups.push([name, [content]]);
  }
  return groups;
}

function elementStrength(element: string, sum: Exact | null): ElementStrength {
  const oxide = asOxide(element, sum ?? ZERO);
  return {
    element,
    mgPerL: sum && toNumber(sum),
    oxide: oxide && { oxide: oxide.oxide, mgPerL: sum && toNumber(oxide.amount) },
  };
}

/** Sums by name, whatever the case, in the order in which the names came. */
class Sums {
  private readonly sums: [string, Exact | null][] = [];

  add(name: string, amount: Exact | null): void {
    const sum = this.sums.find(([known]) => sameSubstance(known, name));
    if (sum) sum[1] = sum[1] && amount && add(sum[1], amount);
    else this.sums.push([name, amount]);
  }

  all(): readonly [string, Exact | null][] {
    return this.sums;
  }
}
