import type { Day } from '@/shared/time/day';
import type { Projection } from '../ahead/plan';
import { lastUsableDay } from '../ledger/last-usable-day';
import { TO_ENTER_WAGE, toEnterForCost, toEnterForPrice } from '../rules/to-enter';
import type { Container } from '../shop';
import type { Piece } from './budget-line';

/**
 * What the weeks ahead will cost as they are planned: what each spraying takes, what dies unused, and the work.
 *
 * Units    whole micros; what cannot be told is null
 */
export function toSpendIn({ sprayings, products, today }: Projection): Piece[] {
  const sprayed = sprayings.flatMap((spraying): Piece[] => {
    const { program, recipe, date, lines, labourCost, spray } = spraying;
    const about = { side: 'planned' as const, on: date, program: program.id, benches: program.benches };
    const name = `${program.id} ${date}`;
    return [
      ...lines.map((line, at): Piece => {
        const { ingredient, cost } = line;
        const { product } = ingredient;
        const known = spray === null ? null : cost;
        const what = `${product.name}: ${recipe.name}`;
        const toEnter = known === null ? toEnterForCost(spraying, line) : [];
        return { ...about, kind: 'product', product, cost: known, what, toEnter, piece: `line ${name} ${at}` };
      }),
      {
        ...about,
        kind: 'labour',
        product: null,
        cost: labourCost,
        toEnter: labourCost === null ? [TO_ENTER_WAGE] : [],
        what: `work: ${recipe.name}`,
        piece: `work ${name}`,
      },
    ];
  });
  const wasted = products.flatMap(({ product, wastes }) =>
    wastes
      .filter(({ container, amount }) => amount > 0 && !isPast(container, today))
      .map(
        ({ container, on, cost }): Piece => ({
          ...{ side: 'planned', kind: 'waste', on, cost, product, program: null, benches: [] },
          toEnter: cost === null ? [toEnterForPrice(container)] : [],
          ...{ what: `${product.name}: will die unused`, piece: `waste ${container.lot} ${container.place}` },
        }),
      ),
  );
  return [...sprayed, ...wasted];
}

/** What is past its day already was wasted before: it is no part of what lies ahead. */
function isPast(container: Container, today: Day): boolean {
  const last = lastUsableDay(container);
  return last !== null && last < today;
}
