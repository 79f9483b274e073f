/**
 * `npm run backup [-- FOLDER]`: a backup of the shop in the data folder, whether the shop runs or not. Without FOLDER it
 * goes where the running shop keeps its own.
 */
import { inTypescript } from './start/in-typescript.js';

await inTypescript(async () => {
  const { backup } = await import('./backup.ts');
  return backup(process.argv.slice(2));
});
