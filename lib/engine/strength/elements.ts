import { divide, type Exact, exact, multiply } from '@/shared/quantity/exact';

/** The part of each oxide's weight that is the element. Source: IUPAC standard atomic weights, to five places. */
const OXIDES: { oxide: string; element: string; part: Exact }[] = [
  { oxide: 'P2O5', element: 'P', part: exact('0.43642') },
  { oxide: 'K2O', element: 'K', part: exact('0.83015') },
  { oxide: 'SiO2', element: 'Si', part: exact('0.46744') },
  { oxide: 'CaO', element: 'Ca', part: exact('0.71470') },
  { oxide: 'MgO', element: 'Mg', part: exact('0.60304') },
];

const ELEMENTS = 'N P K Ca Mg S Si Fe Mn Zn Cu B Mo Cl Ni Na Co Se'.split(' ');

/**
 * The nutrient in a content: an oxide counts as the element in it, an element as itself.
 *
 * Takes   the substance as the label has it, in any case, with small or plain digits: "P2O5", "K₂O", "fe"; and its amount
 * Gives   the element and its amount in the same unit; null for what is no nutrient, such as an insecticide
 */
export function asElement(substance: string, amount: Exact): { element: string; amount: Exact } | null {
  const oxide = OXIDES.find((one) => same(one.oxide, substance));
  if (oxide) return { element: oxide.element, amount: multiply(amount, oxide.part) };
  const element = ELEMENTS.find((one) => same(one, substance));
  return element === undefined ? null : { element, amount };
}

/**
 * The same amount of an element written as the oxide that labels use.
 *
 * Gives   the oxide and its amount in the same unit; null for an element that labels state as it is
 */
export function asOxide(element: string, amount: Exact): { oxide: string; amount: Exact } | null {
  const oxide = OXIDES.find((one) => same(one.element, element));
  return oxide ? { oxide: oxide.oxide, amount: divide(amount, oxide.part) } : null;
}

const SMALL_DIGITS = '₀₁₂₃₄₅₆₇₈₉';

const same = (one: string, typed: string): boolean =>
  one.toLowerCase() ===
  typed
    .trim()
    .replace(/[₀-₉]/g, (digit) => String(SMALL_DIGITS.indexOf(digit)))
    .toLowerCase();
