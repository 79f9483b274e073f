/**
 * `npm run restore -- FILE`: put a backup in the place of the database. It shows first what is in it, asks, and keeps
 * what was there aside. `--yes` answers the question.
 */
import { fileURLToPath } from 'node:url';
import { readyDataFolder } from './start/data-folder.js';
import { inTypescript } from './start/in-typescript.js';
import { holdFolder } from './start/one-server.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

await inTypescript(async () => {
  const { restore } = await import('./restore.ts');
  const folder = readyDataFolder(root, process.env);
  const letGo = await holdFolder(folder);
  try {
    return await restore(process.argv.slice(2), folder);
  } finally {
    letGo();
  }
});
