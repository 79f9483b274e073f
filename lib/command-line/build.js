/** `npm run build`: the built pages, made afresh (or, with --if-changed, only when a source changed), nothing served. */
import { fileURLToPath } from 'node:url';
import { prepareBuild, prepareCode } from './start/prepare.js';
import { tellTroubles } from './start/trouble.js';

const root = fileURLToPath(new URL('../../', import.meta.url));

await tellTroubles(async () => {
  await prepareCode(root);
  await prepareBuild(root, !process.argv.includes('--if-changed'));
});
