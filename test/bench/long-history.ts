import Database from 'better-sqlite3';
import { sealAll } from '@/lib/data/row-seals';
import { generatedShop, type ShopSize } from './generated-shop';

const DAY_MS = 86_400_000;
const LAST_RECORDED = Date.parse('2026-03-01T22:00:00Z');

type Generated = {
  recipes: { id: string; ingredients: { product: string; dose: string }[] }[];
  programs: { recipes: string[]; benches: string[] }[];
};

/** The generated shop of a size with so many records behind it, over the three years before the bench's today. */
export function shopWithRecords(size: ShopSize, records: number): unknown {
  const shop = generatedShop(size) as Generated & object;
  const every = (3 * 365 * DAY_MS) / Math.max(1, records);
  const recipes = new Map(shop.recipes.map((recipe) => [recipe.id, recipe]));
  const applications = Array.from({ length: records }, (_, index) => {
    const program = shop.programs[index % shop.programs.length];
    const recipe = program?.recipes[0] ?? 'r0';
    const started = LAST_RECORDED - Math.round((records - index) * every);
    return {
      ...{ id: `a${index}`, recipe, benches: program?.benches ?? ['b0'], by: 'Sam' },
      startedAt: new Date(started).toISOString(),
      endedAt: new Date(started + 2_700_000).toISOString(),
      products: (recipes.get(recipe)?.ingredients ?? []).map(({ product, dose }) => ({
        ...{ product, dose, amount: '20 mL', name: `Product ${product}`, reiMinutes: 720 },
      })),
      ...{ sprayed: '4 gal', cost: '3.20', plannedCost: '3.00', conditions: 'bright', temperatureC: 21 },
    };
  });
  return { ...shop, applications };
}

/** Write draws of a millilitre each into the bottles of a shop, straight into its database, which nobody has open, and seal every row. */
export function writeMovements(file: string, shopId: string, movements: number, records: number): void {
  const database = new Database(file, { fileMustExist: true });
  try {
    const spots = database.prepare('SELECT lotId, place FROM Container WHERE shopId = ?').all(shopId);
    const first = Number(database.prepare('SELECT max(number) FROM Movement WHERE shopId = ?').pluck().get(shopId));
    const insert = database.prepare(
      `INSERT INTO Movement (shopId, id, number, lotId, place, kind, fromSide, toSide, amount, occurredAt, recordedAt,
         actor, commandId, applicationId) VALUES (?, ?, ?, ?, ?, 'drawn', 'container', 'spray', 1000, ?, ?, 'owner', 'bench', ?)`,
    );
    database.transaction(() => {
      for (let line = 0; line < movements; line += 1) {
        const { lotId, place } = spots[line % spots.length] as { lotId: string; place: number };
        const at = LAST_RECORDED - (movements - line) * 60_000;
        const record = records > 0 ? `a${line % records}` : null;
        insert.run(shopId, `drawn ${line}`, first + 1 + line, lotId, place, at, at, record);
      }
    })();
    sealAll(database, []);
  } finally {
    database.close();
  }
}
