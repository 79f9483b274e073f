import { pathToFileURL } from 'node:url';
import { postgresqlAddressIn, withoutAccount } from '../../data/postgresql-address.js';
import { MISSING_BY_PLAIN_HTTP } from '../../door/missing-by-plain-http.js';
import { readAddress, takePort } from './address.js';
import { privately, readyDataFolder } from './data-folder.js';
import { addressInEnv, certificateFor, keepReachable } from './network.js';
import { lockFolder } from './one-server.js';
import { prepareBuild, prepareCode, prepareData } from './prepare.js';
import { readyDatabase } from './ready-database.js';
import { root } from './root.js';
import { stopSteps } from './step.js';
import { tellTroubles } from './trouble.js';

/**
 * The whole way up, quick refusals first: address, data folder, port, no second server; then packages, client,
 * migrations, demo shop and build, each only when needed; then serve. A certificate needs its packages before the port
 * can be taken.
 */
export function startUp({ developing, asked }) {
  return tellTroubles(async () => {
    const env = { ...process.env };
    const address = readAddress(env, asked);
    const folder = readyDataFolder(root, process.env);
    if (address.network === 'https') await prepareCode(root);
    const server = await takePort(address, await privately(() => certificateFor(root, folder, address)));
    stopOn(['SIGINT', 'SIGTERM', 'SIGHUP'], server);
    await lockFolder(folder, address);
    readyDatabase(folder);

    // Next, the door and the database read where they are from the environment of this very process.
    Object.assign(process.env, {
      DATA_DIR: folder,
      ...addressInEnv(address),
      NEXT_TELEMETRY_DISABLED: '1',
    });
    await prepareCode(root);
    await privately(() => prepareData(root, folder));
    if (!developing) await prepareBuild(root);
    await privately(() => serve(server, address, developing));
    keepReachable(server, { root, folder, env, asked });
    tellReady(address, databaseIn(process.env) ?? folder);
  });
}

function tellReady({ url, publicUrl, network }, where) {
  const phones = publicUrl ? [`Phones reach it at ${publicUrl}`] : [];
  if (network === 'https') phones.push('Each phone has to trust the shop once: npm run certificate');
  if (network === 'plain')
    phones.push('By plain http, as you chose:', ...MISSING_BY_PLAIN_HTTP.map((one) => `- ${one}`));
  const lines = [`Bench & Bottle is ready at ${url}`, ...phones, `Your data is in ${where}`, 'Stop it with Ctrl-C.'];
  console.log(`\n${lines.map((line) => `  ${line}\n`).join('')}`);
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
