import type { IngredientLine, Plan, ProductAhead, Spraying } from '../ahead/plan';
import type { Bench, Container, Product } from '../shop';
import { ratePerMl } from '../strength/dose-in-stock';
import { listed } from './in-words';
import { missingFigure } from './missing-figures';

/** Where something that nobody entered yet is entered. */
export type EntryPlace =
  | {
      of: 'product';
      id: string;
      field:
        | 'gramsPerTeaspoon'
        | 'densityGPerMl'
        | 'contents'
        | 'label.reiHours'
        | 'shelfLife.unopenedDays'
        | 'shelfLife.openedDays';
    }
  | { of: 'bench'; id: string; field: 'area' }
  | { of: 'bench'; id: string; field: 'mlPerPlant'; group: number }
  | { of: 'container'; lot: string; place: number }
  /** By where it stands in the books, which a bottle that is empty keeps. */
  | { of: 'bottle'; lotId: string; place: number }
  | { of: 'offers'; product: string }
  | { of: 'offer'; id: string; product: string }
  | { of: 'supplier'; id: string; field: 'freightPerOrder' | 'minimumOrder' }
  | { of: 'order'; id: string }
  | { of: 'record'; id: string }
  | { of: 'shop'; field: 'wagePerHour' };

/** Something that nobody entered yet: what to do as a sentence, and where. */
export type ToEnter = { words: string; at: EntryPlace };

/**
 * What somebody must enter before the amount of a line is known: the mL per plant of its benches, what the dose needs, or
 * both.
 *
 * Gives   nothing when the amount is known
 */
export function toEnterForAmount({ program, spray }: Spraying, { amount, ingredient }: IngredientLine): ToEnter[] {
  if (amount !== null) return [];
  const { dose, product } = ingredient;
  if (spray || dose.kind === 'perArea') return [missingFigure(dose, product, program.benches)];
  const ofDose = ratePerMl(dose, product) ? [] : [missingFigure(dose, product, program.benches)];
  return [...program.benches.flatMap(toEnterForSpray), ...ofDose];
}

/** What somebody must enter before every amount of a product is known, each once. */
export function toEnterForProduct({ sprayings }: Pick<Plan, 'sprayings'>, ahead: ProductAhead): ToEnter[] {
  const { product, unknownSince } = ahead;
  if (unknownSince === null) return [];
  return eachOnce(
    sprayings.flatMap((spraying) =>
      spraying.lines.flatMap((line) => (line.ingredient.product === product ? toEnterForAmount(spraying, line) : [])),
    ),
  );
}

/** The mL per plant of a bench; nothing when all of them are known. */
export function toEnterForSpray({ id, name, plants }: Bench): ToEnter[] {
  const group = plants.findIndex(({ mlPerPlant }) => mlPerPlant === null);
  if (group < 0) return [];
  const groups = plants.filter(({ mlPerPlant }) => mlPerPlant === null).map((one) => `${one.name} on ${name}`);
  return [
    {
      words: `Enter the mL per plant of ${listed(groups)}; spray a few plants and note what is gone.`,
      at: { of: 'bench', id, field: 'mlPerPlant', group },
    },
  ];
}

type Priced = Pick<Container, 'lot' | 'place' | 'packText'> & { product: Pick<Product, 'name'> };

/** What was paid for a bottle. */
export const toEnterForPrice = ({ lot, place, packText, product }: Priced): ToEnter => ({
  words: `Enter what was paid for ${product.name}, ${packText}, lot ${lot}.`,
  at: { of: 'container', lot, place },
});

/** An offer of a product that nobody sells. */
export const toEnterForOffer = ({ id, name }: Product): ToEnter => ({
  words: `Enter an offer for ${name}, with its price.`,
  at: { of: 'offers', product: id },
});

/** The wage of an hour. */
export const TO_ENTER_WAGE: ToEnter = {
  words: 'Enter the wage of an hour in Setup.',
  at: { of: 'shop', field: 'wagePerHour' },
};

/** Each of them once, in the order in which they were first met. */
export function eachOnce(all: readonly ToEnter[]): ToEnter[] {
  const byWords = new Map<string, ToEnter>();
  for (const one of all) if (!byWords.has(one.words)) byWords.set(one.words, one);
  return [...byWords.values()];
}

/**
 * What somebody must enter before the cost of a line is known.
 *
 * Gives   nothing when it is known
 */
export function toEnterForCost(spraying: Spraying, line: IngredientLine): ToEnter[] {
  if (line.cost !== null) return [];
  if (line.amount === null) return toEnterForAmount(spraying, line);
  const unpaid = line.draws.filter(({ cost }) => cost === null).map(({ container }) => toEnterForPrice(container));
  const unoffered = line.short > 0 && line.shortCost === null ? [toEnterForOffer(line.ingredient.product)] : [];
  return [...unpaid, ...unoffered];
}
