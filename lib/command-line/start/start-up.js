import { fileURLToPath, pathToFileURL } from 'node:url';
import { postgresqlAddressIn, withoutAccount } from '../../data/postgresql-address.js';
import { readAddress, takePort } from './address.js';
import { privately, readyDataFolder } from './data-folder.js';
import { lockFolder } from './one-server.js';
import { prepareBuild, prepareCode, prepareData } from './prepare.js';
import { readyDatabase } from './ready-database.js';
import { stopSteps } from './step.js';
import { tellTroubles } from './trouble.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/**
 * The whole way up, quick refusals first: address, data folder, port, no second server; then packages, client,
 * migrations, demo shop and build, each only when needed; then serve.
 */
export function startUp({ developing }) {
  return tellTroubles(async () => {
    const address = readAddress(process.env);
    const folder = readyDataFolder(root, process.env);
    const server = await takePort(address);
    stopOn(['SIGINT', 'SIGTERM', 'SIGHUP'], server);
    await lockFolder(folder, address);
    readyDatabase(folder);

    // Next, the door and the database read where they are from the environment of this very process.
    Object.assign(process.env, {
      DATA_DIR: folder,
      HOST: address.host,
      PORT: String(address.port),
      NEXT_TELEMETRY_DISABLED: '1',
    });
    await prepareCode(root);
    await privately(() => prepareData(root, folder));
    if (!developing) await prepareBuild(root);
    await privately(() => serve(server, address, developing));
    const where = databaseIn(process.env) ?? folder;
    console.log(`\n  Bench & Bottle is ready at ${address.url}\n  Your data is in ${where}\n  Stop it with Ctrl-C.\n`);
  });
}

/** The PostgreSQL database that is used, without account and password; null when there is none. */
function databaseIn(env) {
  const address = postgresqlAddressIn(env);
  return address && withoutAccount(address);
}

/** Everything from here on is TypeScript, which tsx reads once the packages are there. */
async function serve(server, address, developing) {
  process.env.NODE_ENV = developing ? 'development' : 'production';
  // The server starts processes of its own, by their place in the program.
  process.chdir(root);
  const { tsImport } = await import('tsx/esm/api');
  const { serveShop } = await tsImport(pathToFileURL(`${root}lib/command-line/serve.ts`).href, import.meta.url);
  await serveShop(server, { root, address, developing });
}

/**
 * A stop lets answers under way finish, for two seconds at most, and then closes the database, so that its file alone is
 * whole. A further signal ends the program at once; the database survives that, too, with its log beside it. npm hands a
 * Ctrl-C on that the terminal has sent already, so for a second a further one is the same one.
 */
function stopOn(signals, server) {
  let [stopping, isOther] = [false, false];
  const stop = () => {
    if (stopping && isOther) process.exit(0);
    if (stopping) return;
    stopping = true;
    setTimeout(() => (isOther = true), 1_000).unref();
    stopSteps();
    const end = once(() => closeDatabases().finally(() => process.exit(0)));
    server.close(end);
    server.closeIdleConnections();
    setTimeout(end, 2_000);
  };
  for (const signal of signals) process.on(signal, stop);
}

function once(work) {
  let done = false;
  return () => {
    if (!done) work();
    done = true;
  };
}

/** Close what this process has open: the running shop leaves it where this finds it. No new one is opened from then on. */
async function closeDatabases() {
  globalThis.databasesClosed = true;
  for (const opened of globalThis.openDatabases?.values() ?? []) {
    try {
      await (await opened).close();
    } catch (error) {
      console.error('  The database could not be closed; nothing is lost, its log stays beside it:', error.message);
    }
  }
}
