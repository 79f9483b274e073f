import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { nameIn } from '../engine/name-in';
import { type RotationDocument, rotationDocument } from '../engine/rotation/rotation-document';
import { type House, houseNow } from './house';

type Turn = RotationDocument['benches'][number]['turns'][number];

export type RotationTurn = Pick<Turn, 'on' | 'modes'> & { recipe: string; isPlanned: boolean };

export type RotationBench = {
  id: string;
  name: string;
  /** The groups that it had and will have and that count, as far as the plan reaches, each once. */
  groups: string[];
  /** The first planned spraying that brings a group too often in a row. */
  firstOver: { on: Day; group: string; inARow: number } | null;
  /** What it had last and will have next. */
  turns: RotationTurn[];
};

export type RotationScreen = {
  today: Day;
  sameModeInARow: number;
  /** Benches that were sprayed or will be. */
  benches: RotationBench[];
  programs: { id: string; recipes: string[]; message: string }[];
  /** Products whose groups are published and were not entered, so that they count for nothing. */
  notEntered: { id: string; name: string; published: string[] }[];
};

/** How many turns are shown on either side of today. */
const BEFORE = 4;
const AHEAD = 6;

/** Which modes of action each bench has had and will have, and which order of recipes keeps the shop's limit. */
export async function rotationScreen(clock: Clock): Promise<RotationScreen | null> {
  const here = await houseNow(clock);
  return here && rotationSeen(here);
}

/** The same of a shop with its plan. */
export function rotationSeen({ shop, plan, today }: Pick<House, 'shop' | 'plan' | 'today'>): RotationScreen {
  const { sameModeInARow, benches, programs, notEntered } = rotationDocument(plan);
  const recipe = (id: string) => nameIn(shop.recipes, id);
  return {
    ...{ today, sameModeInARow },
    benches: benches
      .filter(({ turns }) => turns.length > 0)
      .map(({ bench: id, turns }) => ({
        ...{ id, name: nameIn(shop.benches, id), groups: groupsOf(turns), firstOver: firstOverOf(turns) },
        turns: around(turns).map(({ on, modes, recipe: id, program }) => ({
          ...{ on, modes, recipe: recipe(id), isPlanned: program !== null },
        })),
      })),
    programs: programs.map(({ program: id, recipes, message }) => ({ id, recipes: recipes.map(recipe), message })),
    notEntered: notEntered.map(({ product: id, published }) => ({ id, name: nameIn(shop.products, id), published })),
  };
}

const groupsOf = (turns: readonly Turn[]): string[] => [
  ...new Set(turns.flatMap(({ modes }) => modes.flatMap(({ countsAs }) => countsAs ?? []))),
];

function firstOverOf(turns: readonly Turn[]): RotationBench['firstOver'] {
  for (const { on, program, modes } of turns) {
    const over = program === null ? undefined : modes.find(({ isOver }) => isOver);
    if (over) return { on, group: over.group, inARow: over.inARow };
  }
  return null;
}

const around = (turns: readonly Turn[]): Turn[] => [
  ...turns.filter(({ program }) => program === null).slice(-BEFORE),
  ...turns.filter(({ program }) => program !== null).slice(0, AHEAD),
];
