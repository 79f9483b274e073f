import { join } from 'node:path';
import Database from 'better-sqlite3';
import { commandId, type Served } from './served';

/** What is drawn for each mix, in mL. */
const DRAW_ML = 7;

const BOTTLE_ML = 4_000_000;

/** A shop with one large bottle whose mixes close no bench, so that any number of mixes can follow each other. */
const SHOP = {
  format: 'bench-and-bottle/shop@1',
  shop: { name: 'One bottle', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
  products: [{ id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid', label: { reiHours: 0 } }],
  lots: [
    {
      id: 'l',
      product: 'p',
      pack: `${BOTTLE_ML} mL`,
      paid: '4000.00',
      receivedOn: '2026-01-02',
      openedOn: '2026-01-03',
    },
  ],
  benches: [{ id: 'b', name: 'Bench', plants: [{ name: 'Ferns', count: 12, mlPerPlant: 18 }] }],
  recipes: [{ id: 'r', name: 'Soap', ingredients: [{ product: 'p', dose: '12 mL/gal' }] }],
};

/** Bring a shop in, by itself that one. Gives its id. */
export async function bringIn(server: Served, file: object = SHOP): Promise<string> {
  const sent = { commandId: commandId(), into: 'new', text: JSON.stringify(file) };
  const { status, body } = await server.post('/api/v1/shop/import', sent);
  if (status !== 200 || typeof body !== 'object' || body === null || !('shopId' in body)) {
    throw new Error(`the shop was not taken: ${status} ${JSON.stringify(body)}`);
  }
  return String(body.shopId);
}

/** What a device that works in a shop sends with every question. */
export const worksIn = (shop: string) => ({ Cookie: `shown-shop=${shop}` });

/** One mix that draws from the bottle, as a device sends it. */
export const mixOf = (shop: string, id = commandId()) => ({
  ...{ commandId: id, shop, recipe: 'r', benches: ['b'], sprayed: '2 L' },
  ...{ startedAt: '2026-02-02T12:00:00Z', endedAt: '2026-02-02T12:30:00Z' },
  poured: [{ product: 'p', from: [{ lotId: 'l', place: 0, amount: `${DRAW_ML} mL` }] }],
  passed: ['bench-closed', 'too-soon', 'dose-outside-label'].map((rule) => ({ rule, reason: 'a trial' })),
});

/** What the books of the shop hold, read from the file behind the program. */
export const booksOf = (folder: string, shop: string) => booksIn(join(folder, 'shop.db'), shop);

/** The same of any database file. */
export function booksIn(file: string, shop: string) {
  const database = new Database(file, { readonly: true, fileMustExist: true });
  try {
    const count = (sql: string) => Number(database.prepare(sql).pluck().get(shop));
    return {
      sound: database.pragma('integrity_check', { simple: true }) === 'ok',
      commands: new Set(database.prepare(`SELECT id FROM "Command" WHERE shopId = ?`).pluck().all(shop).map(String)),
      records: count(`SELECT count(*) FROM "Application" WHERE shopId = ?`),
      draws: count(`SELECT count(*) FROM "Movement" WHERE shopId = ? AND amount = ${DRAW_ML * 1_000}`),
    };
  } finally {
    database.close();
  }
}

/** How many of the books' commands are mixes: all but the import. */
export const mixesIn = ({ commands }: ReturnType<typeof booksOf>): number => commands.size - 1;
