import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3';
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils';
import * as bindings from '@prisma/schema-engine-wasm/schema_engine_bg';

/*
 * Prisma's own migration engine, as WebAssembly, so that nothing native has to be downloaded.
 */

let loaded = null;

/**
 * Work with the migration engine on one SQLite file, or on ':memory:', and close everything it opened.
 *
 * Takes    the path of the file, which the engine makes when it is not there, and the work
 */
export async function withSchemaEngine(file, work) {
  const opened = [];
  const sqlite = new PrismaBetterSqlite3({ url: file });
  // The engine never closes what it opens, and it holds the file locked for as long as it is open.
  const connect = sqlite.connect.bind(sqlite);
  sqlite.connect = async () => {
    const connection = await connect();
    opened.push(connection);
    return connection;
  };
  try {
    return await withEngineOn(sqlite, work);
  } finally {
    for (const connection of opened) await connection.dispose();
  }
}

/**
 * Work with the same engine as it is for PostgreSQL.
 *
 * Takes    an adapter for a database; without one, a stand-in that answers the engine's first question, which is all that
 *          a script between two schemas needs
 *
 * @template T
 * @param {(engine: { diff(change: object): Promise<{ stdout: string | null }> }) => Promise<T>} work
 * @param {object} adapter
 * @returns {Promise<T>}
 */
export const withPostgresqlEngine = (work, adapter = STAND_IN) => withEngineOn(adapter, work);

async function withEngineOn(adapter, work) {
  loaded ??= load();
  await loaded;
  const factory = bindMigrationAwareSqlAdapterFactory(adapter);
  const engine = await bindings.SchemaEngine.new({ datamodels: undefined }, () => {}, factory);
  try {
    return await work(engine);
  } finally {
    engine.free();
  }
}

const refuse = async () => {
  throw new Error('The stand-in for PostgreSQL answers nothing but which version it is.');
};

const STAND_IN = {
  provider: 'postgres',
  adapterName: 'stand-in',
  connect: async () => ({
    ...{ provider: 'postgres', adapterName: 'stand-in' },
    queryRaw: async () => ({
      columnNames: ['exists', 'version', 'numeric_version'],
      columnTypes: [5, 7, 0],
      rows: [[true, 'PostgreSQL 15.0', 150_000]],
    }),
    ...{ executeRaw: refuse, executeScript: refuse, startTransaction: refuse, dispose: async () => {} },
    getConnectionInfo: () => ({ schemaName: 'public', supportsRelationJoins: true }),
  }),
  connectToShadowDb: refuse,
};

/** No table or enum is managed from elsewhere. */
export const EVERYTHING = { externalTables: [], externalEnums: [] };

async function load() {
  const path = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const bytes = await readFile(path.replace(/\.js$/, '.wasm'));
  const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': bindings });
  bindings.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
}
