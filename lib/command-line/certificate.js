/**
 * `npm run certificate`: make or renew the shop's own certificate, and hand its authority to phones: as a square code in
 * this window, which leads to a page with the file and the steps. The shop may run meanwhile.
 */
import { readAddress } from './start/address.js';
import { readyDataFolder } from './start/data-folder.js';
import { inTypescript } from './start/in-typescript.js';
import { root } from './start/root.js';

await inTypescript(async () => {
  const { handOutAuthority } = await import('./certificate/hand-out-authority.ts');
  return handOutAuthority(readyDataFolder(root, process.env), readAddress(process.env, { network: true }));
});
