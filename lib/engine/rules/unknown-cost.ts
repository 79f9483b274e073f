import type { IngredientLine, Spraying } from '../ahead/plan';
import type { Bench, Product } from '../shop';
import type { Flag } from './flag';
import { dayNear, listed } from './in-words';
import { toEnterFor } from './missing-figures';
import { flagSpraying } from './raise';
import { eachOnce, type ToEnter, toEnterForCost, toEnterForSpray } from './to-enter';
import type { Unflagged } from './unflagged';

/**
 * A spraying whose cost cannot be worked out.
 *
 * Looks at  the cost of every line
 * Fires     when it is unknown, once for a spraying and product; for a recipe with nothing in it, once, when the spray
 *           volume is unknown
 * Severity  note
 * Cleared   by entering what is missing: the mL per plant, what turns the dose into an amount, what was paid for a
 *           container, or an offer to buy what is short
 */
export function unknownCost(plan: Unflagged): Flag[] {
  const flags: Flag[] = [];
  for (const spraying of plan.sprayings) {
    if (spraying.materialCost !== null) continue;
    const lines = spraying.lines.filter(({ cost }) => cost === null);
    const products = new Set(lines.map(({ ingredient }) => ingredient.product));
    for (const product of products.size > 0 ? products : [null]) {
      const about = { rule: 'unknown-cost', severity: 'note', benches: spraying.program.benches, product } as const;
      const its = lines.filter(({ ingredient }) => ingredient.product === product);
      const message = () => messageFor(plan, spraying, product, its);
      flags.push(flagSpraying(spraying, about, message, () => toEnterIn(spraying, its)));
    }
  }
  return flags;
}

const toEnterIn = (spraying: Spraying, lines: IngredientLine[]): ToEnter[] =>
  eachOnce(
    lines.length > 0
      ? lines.flatMap((line) => toEnterForCost(spraying, line))
      : spraying.program.benches.flatMap(toEnterForSpray),
  );

function messageFor(plan: Unflagged, spraying: Spraying, product: Product | null, lines: IngredientLine[]): string {
  const what = product ? `${product.name} in this spraying` : 'this spraying';
  const fact = `What ${what} costs is unknown, and is not in the totals.`;
  // A dose per area asks for no spray; any other says nothing of its own until the spray is known.
  const telling = lines.filter(({ ingredient }) => spraying.spray || ingredient.dose.kind === 'perArea');
  const toEnter = telling.flatMap((line) => missingFor(plan, spraying, line));
  if (!spraying.spray) toEnter.unshift(millilitresFor(spraying));
  return [fact, ...new Set(toEnter)].join(' ');
}

function millilitresFor({ program }: Spraying): string {
  const groups = program.benches.flatMap((bench) => unmeasuredOn(bench));
  return `Enter the mL per plant of ${listed(groups)}; spray a few plants and note what is gone.`;
}

const unmeasuredOn = ({ name, plants }: Bench): string[] =>
  plants.filter(({ mlPerPlant }) => mlPerPlant === null).map((group) => `${group.name} on ${name}`);

function missingFor(plan: Unflagged, { program }: Spraying, line: IngredientLine): string[] {
  const { product, dose } = line.ingredient;
  if (line.amount === null) return [toEnterFor(dose, product, program.benches)];
  const unpaid = line.draws
    .filter(({ cost }) => cost === null)
    .map(({ container }) => `the ${container.packText} received ${dayNear(plan, container.receivedOn)}`);
  const sentences = unpaid.length > 0 ? [`Enter what was paid for ${listed(unpaid)}.`] : [];
  if (line.short > 0 && line.shortCost === null) sentences.push(`Enter an offer for ${product.name}, with its price.`);
  return sentences;
}
