import { fileURLToPath } from 'node:url';
import { installPackages } from './install.js';
import { tellTroubles } from './trouble.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));

/**
 * Do the work of a command that is written in TypeScript: install what is missing first, and end with the code that the
 * work gives.
 */
export function inTypescript(work) {
  return tellTroubles(async () => {
    await installPackages(root);
    const { register } = await import('tsx/esm/api');
    register({ tsconfig: `${root}tsconfig.json` });
    process.exitCode = await work();
  });
}
