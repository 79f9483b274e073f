/**
 * `npm run move -- --to postgresql://…`: copy everything in the data folder into an empty PostgreSQL database, and compare
 * all of it. `--from postgresql://…` brings it back into the data folder. The shop must be stopped.
 */
import { fileURLToPath } from 'node:url';
import { readyDataFolder } from './start/data-folder.js';
import { inTypescript } from './start/in-typescript.js';
import { holdFolder } from './start/one-server.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

await inTypescript(async () => {
  const { move } = await import('./move.ts');
  const folder = readyDataFolder(root, process.env);
  const letGo = await holdFolder(folder);
  try {
    return await move(process.argv.slice(2), folder);
  } finally {
    letGo();
  }
});
