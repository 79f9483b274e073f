import { fileURLToPath } from 'node:url';
import { readyDataFolder } from './data-folder.js';
import { inTypescript } from './in-typescript.js';
import { holdFolder } from './one-server.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/**
 * Do the work of a command on the data folder of a shop that is stopped, and let none start meanwhile.
 *
 * Takes    what loads the work once everything is installed. The work is given the words that were typed and the folder,
 *          and gives the code to end with
 */
export const inStoppedShop = (load) =>
  inTypescript(async () => {
    const work = await load();
    const folder = readyDataFolder(root, process.env);
    const letGo = await holdFolder(folder);
    try {
      return await work(process.argv.slice(2), folder);
    } finally {
      letGo();
    }
  });
