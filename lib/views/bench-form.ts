import 'server-only';
import { type BenchDraft, draftOfBench } from '@/shared/forms/bench';
import type { Outcome, Reading } from '@/shared/outcome';
import { accept } from '@/shared/outcome';
import type { Clock } from '../clock';
import {
  type LeavesTyped,
  type PerPlant,
  sprayByLeaves,
  sprayByTrials,
  type TrialTyped,
} from '../engine/bench/spray-trials';
import { shopNow } from './house';
import { type OpeningSeen, openingsSeen } from './openings-confirmed';
import { openedThing, type ThingOpened } from './thing-form';

export type BenchListed = {
  id: string;
  name: string;
  customers: boolean;
  enclosed: boolean;
  area: string | null;
  plants: number;
  /** How many groups of plants there are, and of how many nobody knows the mL per plant. */
  groups: number;
  unmeasured: number;
};

/** Every bench with what stands on it. */
export async function benchesScreen(clock: Clock): Promise<BenchListed[] | null> {
  const here = await shopNow(clock);
  return here
    ? here.file.benches.map(({ id, name, customers, enclosed, area, plants }) => ({
        ...{ id, name, customers, enclosed, area },
        plants: plants.reduce((sum, { count }) => sum + count, 0),
        groups: plants.length,
        unmeasured: plants.filter(({ mlPerPlant }) => mlPerPlant === null).length,
      }))
    : null;
}

export type BenchFormScreen = { thing: ThingOpened; draft: BenchDraft; otherNames: string[]; openings: OpeningSeen[] };

const ANYTHING = { bench: '', product: '', from: '', to: '', person: '' };

/** What the form of a bench needs, changed or new. Gives null when there is no shop, or no such bench. */
export async function benchFormScreen(clock: Clock, id: string | null): Promise<BenchFormScreen | null> {
  const here = await shopNow(clock);
  const bench = here?.file.benches.find((one) => one.id === id) ?? null;
  if (!here || (id !== null && !bench)) return null;
  const others = here.file.benches.filter((one) => one.id !== id);
  const openings = id === null ? [] : await openingsSeen(here.id, here.shop, { ...ANYTHING, bench: id });
  const otherNames = others.map(({ name }) => name);
  return { thing: openedThing(here.id, bench), draft: draftOfBench(bench), otherNames, openings };
}

/** What is asked about the spray of one plant: by trials, or by its leaves. */
export type PerPlantAsked = { trials: TrialTyped[] } | { leaves: LeavesTyped };

/** What one plant takes, or what is still missing, as a sentence. Saves nothing. */
export const perPlantAnswer = async (asked: PerPlantAsked): Promise<Outcome<Reading<PerPlant>>> =>
  accept('trials' in asked ? sprayByTrials(asked.trials) : sprayByLeaves(asked.leaves));
