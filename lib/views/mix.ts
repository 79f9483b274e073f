import 'server-only';
import type { Day } from '@/shared/time/day';
import { addDays } from '@/shared/time/day';
import type { Clock } from '../clock';
import type { Fig } from './figures';
import { type House, houseNow } from './house';
import { type RecipeListed, recipesListed } from './recipes';

/** A planned spraying of the next days: what is sprayed where, and how much is to be mixed. */
export type PlannedMix = {
  program: string;
  date: Day;
  recipe: { id: string; name: string };
  benches: string[];
  sprayMl: Fig;
  fills: Fig | null;
};

export type MixScreen = Pick<House, 'today' | 'ways'> & { planned: PlannedMix[]; recipes: RecipeListed[] };

const DAYS_AHEAD = 7;

/** What can be mixed: the planned sprayings of the next days, and the recipes. */
export async function mixScreen(clock: Clock): Promise<MixScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { today, ways, plan, figure } = house;
  const planned = plan.sprayings
    .filter(({ date }) => date <= addDays(today, DAYS_AHEAD - 1))
    .map(({ program, date, recipe, spray }) => ({
      ...{ program: program.id, date, recipe: { id: recipe.id, name: recipe.name } },
      benches: program.benches.map(({ name }) => name),
      sprayMl: figure('spraying', program.id, date, 'sprayMl'),
      fills: spray && figure('spraying', program.id, date, 'fills'),
    }));
  return { today, ways, planned, recipes: recipesListed(house) };
}
