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
  loaded ??= load();
  await loaded;
  const opened = [];
  const sqlite = new PrismaBetterSqlite3({ url: file });
  // The engine never closes what it opens, and it holds the file locked for as long as it is open.
  const connect = sqlite.connect.bind(sqlite);
  sqlite.connect = async () => {
    const connection = await connect();
    opened.push(connection);
    return connection;
  };
  const factory = bindMigrationAwareSqlAdapterFactory(sqlite);
  const engine = await bindings.SchemaEngine.new({ datamodels: undefined }, () => {}, factory);
  try {
    return await work(engine);
  } finally {
    engine.free();
    for (const connection of opened) await connection.dispose();
  }
}

/** No table or enum is managed from elsewhere. */
export const EVERYTHING = { externalTables: [], externalEnums: [] };

async function load() {
  const path = createRequire(import.meta.url).resolve('@prisma/schema-engine-wasm/schema_engine_bg');
  const bytes = await readFile(path.replace(/\.js$/, '.wasm'));
  const { instance } = await WebAssembly.instantiate(bytes, { './schema_engine_bg.js': bindings });
  bindings.__wbg_set_wasm(instance.exports);
  instance.exports.__wbindgen_start();
}
