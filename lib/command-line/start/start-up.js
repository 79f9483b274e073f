import { fileURLToPath, pathToFileURL } from 'node:url';
import { readAddress, takePort } from './address.js';
import { readyDataFolder } from './data-folder.js';
import { lockFolder } from './one-server.js';
import { prepareBuild, prepareCode, prepareData } from './prepare.js';
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

    // Next, the door and the database read where they are from the environment of this very process.
    Object.assign(process.env, {
      DATA_DIR: folder,
      HOST: address.host,
      PORT: String(address.port),
      NEXT_TELEMETRY_DISABLED: '1',
    });
    await prepareCode(root);
    await prepareData(root, folder);
    if (!developing) await prepareBuild(root);
    await serve(server, address, developing);
    console.log(`\n  Bench & Bottle is ready at ${address.url}\n  Your data is in ${folder}\n  Stop it with Ctrl-C.\n`);
  });
}

/** Everything from here on is TypeScript, which tsx reads once the packages are there. */
async function serve(server, address, developing) {
  process.env.NODE_ENV = developing ? 'development' : 'production';
  const { tsImport } = await import('tsx/esm/api');
  const { serveShop } = await tsImport(pathToFileURL(`${root}lib/command-line/serve.ts`).href, import.meta.url);
  await serveShop(server, { root, address, developing });
}

/** Ctrl-C lets answers under way finish, for two seconds at most, and is not an error. */
function stopOn(signals, server) {
  let stopping = false;
  const stop = () => {
    if (stopping) process.exit(0);
    stopping = true;
    stopSteps();
    server.close(() => process.exit(0));
    server.closeIdleConnections();
    setTimeout(() => process.exit(0), 2_000).unref();
  };
  for (const signal of signals) process.on(signal, stop);
}
