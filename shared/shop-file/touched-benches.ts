import type { ShopFile } from './contract';
import type { RawShop } from './read-what-can-be';
import type { UnreadThing } from './unread';

type Raw = { readonly [field: string]: unknown };

/**
 * The benches that a thing which cannot be read may have closed: of a record and a program those that they name, of a
 * product and a recipe those of every record and program with it, of a bench itself, of the time zone all. Nothing else
 * closes a bench.
 *
 * Gives    'all' where it cannot be read which benches those are
 */
export function touchedBenches(
  raw: RawShop,
  file: ShopFile,
  { list, id, odd }: Pick<UnreadThing, 'list' | 'id' | 'odd'>,
): readonly string[] | 'all' {
  const known = new Set(file.benches.map((bench) => bench.id));
  const of = (things: readonly unknown[]) => together(things.map((thing) => named(thing as Raw, known)));
  if (list === 'shop' && odd.some(({ path }) => path === 'timeZone')) return 'all';
  const itself = list === 'shop' ? [] : raw[list].filter((thing) => thing.id === id);
  if (list === 'benches') return known.has(id) ? [id] : 'all';
  if (list === 'applications' || list === 'programs') return of(itself);
  if (list === 'products') return of([...raw.applications, ...raw.programs].filter((one) => holds(one, id, raw)));
  if (list === 'recipes') {
    return of([...raw.applications, ...raw.programs].filter((one) => recipesOf(one).includes(id)));
  }
  return [];
}

function named({ benches }: Raw, known: ReadonlySet<string>): readonly string[] | 'all' {
  if (!Array.isArray(benches) || benches.length === 0) return 'all';
  return benches.every((id) => known.has(id)) ? benches : 'all';
}

const together = (some: readonly (readonly string[] | 'all')[]): readonly string[] | 'all' =>
  some.includes('all') ? 'all' : [...new Set(some.flat())];

const listIn = (value: unknown): Raw[] => (Array.isArray(value) ? value : []);

const recipesOf = (thing: unknown): unknown[] => {
  const { recipe, recipes } = thing as Raw;
  return recipe === undefined ? listIn(recipes) : [recipe];
};

/** Whether a record or a program is of a recipe with a product in it, or a record says that it went in. */
function holds(thing: unknown, product: string, { recipes }: RawShop): boolean {
  const isIn = (lines: unknown) => listIn(lines).some((line) => line.product === product);
  if (isIn((thing as Raw).products)) return true;
  const named = recipesOf(thing);
  return recipes.some((recipe) => named.includes(recipe.id) && isIn((recipe as Thing).ingredients));
}

type Thing = { id: string; ingredients?: unknown };
