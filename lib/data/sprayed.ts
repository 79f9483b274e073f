import 'server-only';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import type { Instant } from '@/shared/time/instant';
import type { Rows } from './database';
import type { ApplicationRecord } from './save-records';
import { missingBench, recipeToday } from './shop-facts';

/** What a person says was sprayed. */
export type Sprayed = { recipe: string; benches: string[]; startedAt: Instant; endedAt: Instant | null };

/**
 * What was sprayed, with the recipe as it stands today and its labels' intervals.
 *
 * Refuses  'not-found' for the recipe or a bench; 'faults' for no bench at all, or an end before the start
 */
export async function sprayedOf(
  rows: Rows,
  shopId: string,
  { recipe, benches, startedAt, endedAt }: Sprayed,
): Promise<Outcome<Omit<ApplicationRecord, 'id' | 'position' | 'number' | 'reason' | 'details'>>> {
  const faults: Fault[] = heldTo(['startedAt', PIECES.moment, startedAt], ['endedAt', PIECES.moment, endedAt]);
  if (benches.length === 0) faults.push({ path: 'benches', message: 'Name at least one bench that was sprayed.' });
  if (new Set(benches).size < benches.length) faults.push({ path: 'benches', message: 'Name each bench once.' });
  if (endedAt !== null && endedAt < startedAt) {
    faults.push({ path: 'endedAt', message: 'The end is before the start. Put one of the two right.' });
  }
  if (faults.length > 0) return refuse({ code: 'faults', faults });
  const today = await recipeToday(rows, shopId, recipe);
  if (!today) return refuse({ code: 'not-found', what: 'recipe', id: recipe });
  const missing = await missingBench(rows, shopId, benches);
  if (missing !== null) return refuse({ code: 'not-found', what: 'bench', id: missing });
  return accept({ recipe, recipeNumber: today.number, benches, startedAt, endedAt, products: today.products });
}
