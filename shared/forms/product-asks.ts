/** What a product form can ask. Whatever is not asked up front stays within reach behind "more". */
export type Asked =
  | 'formulation'
  | 'silicate'
  | 'density'
  | 'spoon'
  | 'limits'
  | 'modes'
  | 'safety'
  | 'sprayPh'
  | 'notWith'
  | 'registration'
  | 'heat'
  | 'aid';

const AGAINST = ['insecticide', 'miticide', 'insecticide/miticide', 'fungicide'];
const FEEDS = ['nutrient', 'biostimulant'];

/**
 * What a product form asks up front.
 *
 * Takes    the kind and the form as they are chosen so far; empty while they are not
 * Gives    a nutrient is not asked for a pre-harvest interval, modes of action or limits; a powder is asked what a
 *          teaspoon weighs, a liquid its density. The re-entry interval, the rates and how long it keeps are always
 *          asked and not listed here
 */
export function askedOf(kind: string, form: string): ReadonlySet<Asked> {
  const asked = new Set<Asked>();
  if (form === 'liquid') asked.add('density');
  if (form === 'powder') asked.add('spoon');
  if (FEEDS.includes(kind)) asked.add('silicate');
  if (kind === 'pH adjuster') asked.add('safety').add('aid');
  if (kind === 'surfactant') asked.add('notWith').add('formulation');
  if (AGAINST.includes(kind)) {
    for (const one of AGAINST_ASKED) asked.add(one);
  }
  return asked;
}

const AGAINST_ASKED = [
  'formulation',
  'limits',
  'modes',
  'safety',
  'sprayPh',
  'notWith',
  'registration',
  'aid',
] as const;

/** What belongs in the contents of a kind, in words, with names to choose from. */
export function contentsOf(kind: string): { label: string; hint: string; names: readonly string[] } {
  if (kind === 'pH adjuster') {
    return {
      label: 'Which acid or base, and how strong',
      hint: 'The acid decides how much of it is needed.',
      names: ACIDS,
    };
  }
  if (FEEDS.includes(kind)) {
    return { label: 'What it feeds', hint: 'As on the label: N, P2O5, K2O, Ca, Mg, S, SiO2, Fe …', names: NUTRIENTS };
  }
  return { label: 'What is in it', hint: 'Each active substance with its strength.', names: [] };
}

const ACIDS = [
  ...['phosphoric acid', 'citric acid', 'sulfuric acid', 'nitric acid', 'hydrochloric acid', 'acetic acid'],
  'lactic acid',
];
const NUTRIENTS = ['N', 'P2O5', 'K2O', 'Ca', 'Mg', 'S', 'SiO2', 'Fe', 'Mn', 'Zn', 'Cu', 'B', 'Mo'];
