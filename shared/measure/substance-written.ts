/*
 * The names by which labels and people call nutrients, and what the shop file calls them. On labels phosphate and potash
 * mean the oxides, phosphorus and potassium the elements.
 *
 * Source   AAPFCO's uniform fertilizer bill: guaranteed analysis, "available phosphate (P2O5)", "soluble potash (K2O)";
 *          from memory
 */
const NAMES: Record<string, string> = {
  N: 'nitrogen',
  P: 'phosphorus',
  K: 'potassium',
  Ca: 'calcium',
  Mg: 'magnesium',
  S: 'sulfur sulphur',
  Si: 'silicon',
  Fe: 'iron',
  Mn: 'manganese',
  Zn: 'zinc',
  Cu: 'copper',
  B: 'boron',
  Mo: 'molybdenum',
  Cl: 'chlorine chloride',
  Na: 'sodium',
  Co: 'cobalt',
  P2O5: 'phosphate phosphoric-oxide p205',
  K2O: 'potash k20',
  SiO2: 'silica sio2',
};

const BY_NAME = new Map(
  Object.entries(NAMES).flatMap(([symbol, names]) =>
    [symbol.toLowerCase(), ...names.split(' ')].map((name) => [name.replace('-', ' '), symbol]),
  ),
);

/** Words that labels put before a nutrient and that do not change what it is. */
const BEFORE = /^(total|available|soluble|water[- ]soluble|chelated|elemental)\s+/i;

/**
 * The nutrient that a text names, as the shop file has it: "Nitrogen" is "N", "Soluble potash (K2O)" is "K2O". Whatever is
 * no nutrient stays as it is written.
 *
 * Takes   the text; whether the product is a nutrient, since sulfur and copper are sprayed against disease, too
 */
export function plainSubstance(text: string, isNutrient: boolean): string {
  const trimmed = text.trim();
  if (!isNutrient) return trimmed;
  const plain = trimmed.toLowerCase().replace(/[₀-₉]/g, (digit) => String('₀₁₂₃₄₅₆₇₈₉'.indexOf(digit)));
  const [, bracketed] = /\(([^()]+)\)$/.exec(plain) ?? [];
  let name = plain.replace(/\s*\([^()]*\)$/, '');
  for (let shorter = name.replace(BEFORE, ''); shorter !== name; shorter = name.replace(BEFORE, '')) name = shorter;
  return BY_NAME.get(bracketed?.trim() ?? name) ?? BY_NAME.get(name) ?? trimmed;
}
