/** An acid that water may be acidified with. */
export type Acid = {
  name: 'phosphoric' | 'citric' | 'sulfuric' | 'nitric' | 'hydrochloric' | 'acetic' | 'lactic';
  /** Protons that are given off whatever the pH of a spray. */
  always: number;
  /** The pKₐ of the others, the strongest first. */
  pKas: readonly number[];
  /** The nutrient in it, and which part of the weight of the pure acid that is; null for an organic acid. */
  brings: { element: 'P' | 'S' | 'N' | 'Cl'; part: number } | null;
};

/** An acid as a label names it, with the mass of a mole of what is named: citric acid is also sold with water in it. */
export type NamedAcid = { acid: Acid; molarMass: number };

/** Source: pKₐ at 25 °C by the program's contract, which rounds CRC Handbook and NIST 46 values; molar masses by IUPAC. */
const PHOSPHORIC: Acid = {
  name: 'phosphoric',
  always: 0,
  pKas: [2.148, 7.198, 12.35],
  brings: { element: 'P', part: 30.974 / 97.994 },
};
const CITRIC: Acid = { name: 'citric', always: 0, pKas: [3.128, 4.761, 6.396], brings: null };
const SULFURIC: Acid = { name: 'sulfuric', always: 2, pKas: [], brings: { element: 'S', part: 32.06 / 98.072 } };
const NITRIC: Acid = { name: 'nitric', always: 1, pKas: [], brings: { element: 'N', part: 14.007 / 63.012 } };
const HYDROCHLORIC: Acid = {
  name: 'hydrochloric',
  always: 1,
  pKas: [],
  brings: { element: 'Cl', part: 35.45 / 36.458 },
};
const ACETIC: Acid = { name: 'acetic', always: 0, pKas: [4.756], brings: null };
const LACTIC: Acid = { name: 'lactic', always: 0, pKas: [3.86], brings: null };

const NAMED: { named: NamedAcid; names: readonly string[] }[] = [
  {
    named: { acid: PHOSPHORIC, molarMass: 97.994 },
    names: ['phosphoric acid', 'orthophosphoric acid', 'ortho phosphoric acid', 'h3po4'],
  },
  {
    named: { acid: CITRIC, molarMass: 192.123 },
    names: ['citric acid', 'citric acid anhydrous', 'anhydrous citric acid', 'c6h8o7', 'h3c6h5o7'],
  },
  {
    named: { acid: CITRIC, molarMass: 210.138 },
    names: ['citric acid monohydrate', 'citric acid hydrate', 'c6h8o7 h2o'],
  },
  {
    named: { acid: SULFURIC, molarMass: 98.072 },
    names: ['sulfuric acid', 'sulphuric acid', 'h2so4'],
  },
  { named: { acid: NITRIC, molarMass: 63.012 }, names: ['nitric acid', 'hno3'] },
  {
    named: { acid: HYDROCHLORIC, molarMass: 36.458 },
    names: ['hydrochloric acid', 'hydrogen chloride', 'muriatic acid', 'hcl'],
  },
  {
    named: { acid: ACETIC, molarMass: 60.052 },
    names: ['acetic acid', 'ethanoic acid', 'ch3cooh', 'c2h4o2'],
  },
  {
    named: { acid: LACTIC, molarMass: 90.078 },
    names: ['lactic acid', 'l lactic acid', 'dl lactic acid', '2 hydroxypropanoic acid', 'c3h6o3'],
  },
];

const SMALL_DIGITS = '₀₁₂₃₄₅₆₇₈₉';

/**
 * The acid that a content names.
 *
 * Takes    "Phosphoric acid", "H₃PO₄", "citric acid, monohydrate"; in any case, with small or plain digits
 * Gives    null for anything else, an acid without a part in acidifying water (humic, boric) too
 */
export function acidNamed(substance: string): NamedAcid | null {
  const plain = substance
    .replace(/[₀-₉]/g, (digit) => String(SMALL_DIGITS.indexOf(digit)))
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim()
    .toLowerCase();
  return NAMED.find(({ names }) => names.includes(plain))?.named ?? null;
}

/**
 * The protons that a mole of an acid has given off at a pH: what it takes out of the alkalinity there.
 *
 *   Σ i × share of the acid that has lost i protons
 *
 * At the pH of a spray phosphoric acid gives about one of its three, citric acid about two of its three.
 */
export function equivalentsPerMole(acid: Acid, pH: number): number {
  return shares(acid, pH).reduce((sum, share, lost) => sum + share * lost, acid.always);
}

/** The shares of an acid that have lost none, one, two … of the protons that depend on the pH. They add up to one. */
export function shares({ pKas }: Acid, pH: number): number[] {
  const weights = [1];
  for (const pKa of pKas) weights.push((weights.at(-1) ?? 1) * 10 ** (pH - pKa));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / all);
}
