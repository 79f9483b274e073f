import 'server-only';
import { draftOfProgram, type ProgramDraft } from '@/shared/forms/program';
import type { WorkTimes } from '@/shared/mix/work-minutes';
import type { ShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { shopHere } from '../data/shops';
import { shopFileOf } from '../data/snapshot';
import { plantsOn } from '../engine/bench/spray-volume';
import { nameIn } from '../engine/name-in';
import { type HereNow, shopNow } from './house';
import { openedThing, type ThingOpened } from './thing-form';

type Named = { id: string; name: string };
type FileProgram = ShopFile['programs'][number];

type ProgramListed = {
  id: string;
  recipes: string[];
  benches: string[];
  /** The program as it is typed, from which its next days follow. */
  draft: ProgramDraft;
};

export type ProgramsScreen = { today: Day; zone: HereNow['ways']['zone']; programs: ProgramListed[] };

/** Every program: what it sprays where. */
export async function programsScreen(clock: Clock): Promise<ProgramsScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { file, today, ways } = here;
  const programs = file.programs.map((program) => ({
    id: program.id,
    recipes: namesOf(file.recipes, program.recipes),
    benches: namesOf(file.benches, program.benches),
    draft: draftOfProgram(program, today),
  }));
  return { today, zone: ways.zone, programs };
}

function namesOf(things: readonly Named[], ids: readonly string[]): string[] {
  return ids.map((id) => nameIn(things, id));
}

export type ProgramFormScreen = {
  thing: ThingOpened;
  draft: ProgramDraft;
  recipes: Named[];
  benches: (Named & { plants: number })[];
  /** The names of the sprayers, of which the first is meant where none is chosen. */
  sprayers: string[];
  /** What the shop says of how long work takes. */
  work: WorkTimes;
  today: Day;
  zone: HereNow['ways']['zone'];
};

/** What the form of a program needs, changed or new. Gives null when there is no shop, or no such program. */
export async function programFormScreen(clock: Clock, id: string | null): Promise<ProgramFormScreen | null> {
  const here = await shopNow(clock);
  const program = here?.file.programs.find((one) => one.id === id) ?? null;
  if (!here || (id !== null && !program)) return null;
  const { file, today, ways } = here;
  return {
    thing: openedThing(here.id, program),
    draft: draftOfProgram(program, today),
    recipes: file.recipes.map(named),
    benches: here.shop.benches.map((bench) => ({ ...named(bench), plants: plantsOn([bench]) })),
    sprayers: [...new Set(file.shop.sprayers.map(({ name }) => name))],
    work: workTimesOf(file.shop),
    ...{ today, zone: ways.zone },
  };
}

const workTimesOf = ({ minutesPerPlant, minutesPerBatch }: WorkTimes): WorkTimes => ({
  minutesPerPlant,
  minutesPerBatch,
});

const named = ({ id, name }: Named): Named => ({ id, name });

/** A program as it stands, whose further fields a form leaves as they are; null for a new one. */
export async function standingProgram(shop: string, id: string | null): Promise<FileProgram | null> {
  if (id === null || !(await shopHere(shop))) return null;
  return (await shopFileOf(shop)).programs.find((program) => program.id === id) ?? null;
}
