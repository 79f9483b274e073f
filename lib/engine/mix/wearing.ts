import { plain } from '../rules/in-words';
import type { Product } from '../shop';
import { withSources } from '../strength/sources';

/** What the labels in a mix ask of the person who mixes it. */
export type Wearing = {
  /** Every piece that any of the labels names, each once. */
  equipment: string[];
  /** Products without a piece of equipment entered: their labels may ask for more. */
  equipmentUnknown: Product[];
  /** The gravest signal word in the mix; null when none is entered. */
  signalWord: string | null;
};

/**
 * What to wear for a mix: the union of what its labels ask for, and the gravest of their signal words. What a stock
 * solution is made from is in the tank, too.
 */
export function wearingFor(mixed: readonly Product[]): Wearing {
  const pieces = new Map<string, string>();
  const products = [...new Set(mixed.flatMap(withSources))];
  for (const { label } of products) {
    for (const piece of label.protectiveEquipment) if (!pieces.has(plain(piece))) pieces.set(plain(piece), piece);
  }
  const words = products.flatMap(({ label }) => label.signalWord ?? []);
  const [signalWord = null] = words.sort((a, b) => gravity(a) - gravity(b));
  return {
    equipment: [...pieces.values()],
    equipmentUnknown: mixed.filter(({ label }) => label.protectiveEquipment.length === 0),
    signalWord,
  };
}

/** Source: 40 CFR 156.64, by toxicity category; poison is said beside danger. A word that is none of these comes last. */
const WORDS = [/poison/i, /danger/i, /warning/i, /caution/i];

const gravity = (word: string): number => {
  const at = WORDS.findIndex((pattern) => pattern.test(word));
  return at < 0 ? WORDS.length : at;
};
