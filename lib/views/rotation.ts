import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { type RotationDocument, rotationDocument } from '../engine/rotation/rotation-document';
import { houseNow } from './house';

type Turn = RotationDocument['benches'][number]['turns'][number];

export type RotationTurn = Pick<Turn, 'on' | 'modes'> & { recipe: string; isPlanned: boolean };

export type RotationScreen = {
  today: Day;
  sameModeInARow: number;
  /** Benches that were sprayed or will be, with what they had last and will have next. */
  benches: { id: string; name: string; turns: RotationTurn[] }[];
  programs: {
    id: string;
    recipes: string[];
    proposed: string[];
    isAsNow: boolean;
    repeatsNow: number;
    message: string;
  }[];
  /** Products whose groups are published and were not entered, so that they count for nothing. */
  notEntered: { id: string; name: string; published: string[] }[];
};

/** How many turns are shown on either side of today. */
const BEFORE = 4;
const AHEAD = 6;

/** Which modes of action each bench has had and will have, and which order of recipes keeps the shop's limit. */
export async function rotationScreen(clock: Clock): Promise<RotationScreen | null> {
  const here = await houseNow(clock);
  if (!here) return null;
  const { sameModeInARow, benches, programs, notEntered } = rotationDocument(here.plan);
  const { shop, today } = here;
  const recipe = namesIn(shop.recipes);
  const bench = namesIn(shop.benches);
  const product = namesIn(shop.products);
  return {
    ...{ today, sameModeInARow },
    benches: benches
      .filter(({ turns }) => turns.length > 0)
      .map(({ bench: id, turns }) => ({ id, name: bench(id), turns: around(turns).map((turn) => seen(turn, recipe)) })),
    programs: programs.map(({ program: id, recipes, proposed, isAsNow, repeatsNow, message }) => {
      return { id, recipes: recipes.map(recipe), proposed: proposed.map(recipe), isAsNow, repeatsNow, message };
    }),
    notEntered: notEntered.map(({ product: id, published }) => ({ id, name: product(id), published })),
  };
}

type Name = (id: string) => string;

function namesIn(things: readonly { id: string; name: string }[]): Name {
  const names = new Map(things.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? id;
}

const seen = ({ on, modes, recipe, program }: Turn, name: Name): RotationTurn => ({
  ...{ on, modes, recipe: name(recipe), isPlanned: program !== null },
});

const around = (turns: readonly Turn[]): Turn[] => [
  ...turns.filter(({ program }) => program === null).slice(-BEFORE),
  ...turns.filter(({ program }) => program !== null).slice(0, AHEAD),
];
