import { COUNT, type Pairs } from '@/shared/forms/mix-query';
import { showVolume } from '@/shared/measure/show';
import { toNumber } from '@/shared/quantity/exact';
import { readDay } from '@/shared/time/day';
import { ownSprayer, sprayersOf } from '../engine/mix/asked-mix';
import { plannedTurn } from '../engine/mix/planned-turn';
import type { Shop } from '../engine/shop';

/** What may be chosen for a mix, with what was chosen. */
export type MixForm = {
  recipes: { id: string; name: string }[];
  sprayers: { name: string; holds: string }[];
  benches: MixFormBench[];
  recipe: string;
  by: 'benches' | 'plants' | 'volume';
  volume: string;
  area: string;
  sprayer: number;
  planned: { program: string; on: string } | null;
};

export type MixFormBench = {
  id: string;
  name: string;
  chosen: boolean;
  groups: { field: string; name: string; pot: string | null; there: number; count: string }[];
};

/**
 * The form that asks for a mix.
 *
 * Takes    the names and values of an address, with all that was typed into the form, right or wrong
 */
export function mixForm(shop: Shop, pairs: Pairs): MixForm {
  const one = (name: string) => pairs.find(([key]) => key === name)?.[1] ?? '';
  const planned = one('program') !== '' ? { program: one('program'), on: one('on') } : null;
  const turn = turnOf(shop, planned);
  const named = pairs.filter(([name]) => name === 'bench').map(([, id]) => id);
  const chosen = new Set(named.length > 0 ? named : turn?.program.benches.map(({ id }) => id));
  const counts = countsIn(pairs);
  return {
    recipes: shop.recipes.map(({ id, name }) => ({ id, name })),
    sprayers: sprayersOf(shop).map(({ name, capacity }) => ({
      name,
      holds: showVolume(toNumber(capacity) * 1000, shop.units),
    })),
    benches: shop.benches.map(({ id, name, plants }) => ({
      ...{ id, name, chosen: chosen.has(id) },
      groups: plants.map(({ name, pot, count }, group) => {
        const at = `${id}/${group}`;
        return { field: `${COUNT}${at}`, name, pot, there: count, count: counts.get(at) ?? '' };
      }),
    })),
    recipe: one('recipe') || (turn?.recipe.id ?? ''),
    by: byOf(one('by'), one('volume') !== '', counts.size > 0),
    ...{
      volume: one('volume'),
      area: one('area'),
      sprayer: one('sprayer') === '' ? ownSprayer(shop, turn) : Number(one('sprayer')) || 0,
      planned,
    },
  };
}

function turnOf(shop: Shop, planned: MixForm['planned']) {
  const day = planned && readDay(planned.on);
  const turn = day?.ok ? plannedTurn(shop, planned?.program ?? '', day.value) : null;
  return turn?.ok ? turn.value : null;
}

/** How many plants of each group, as they were written. */
function countsIn(pairs: Pairs): Map<string, string> {
  const counts = new Map<string, string>();
  for (const [name, value] of pairs) {
    const [, at, count] = (name === 'plants' && /^(.+\/\d+)\/(.*)$/.exec(value)) || [];
    if (at !== undefined) counts.set(at, count ?? '');
    if (name.startsWith(COUNT) && value !== '') counts.set(name.slice(COUNT.length), value);
  }
  return counts;
}

function byOf(by: string, hasVolume: boolean, hasCounts: boolean): MixForm['by'] {
  if (by === 'plants' || by === 'volume' || by === 'benches') return by;
  return hasVolume ? 'volume' : hasCounts ? 'plants' : 'benches';
}
