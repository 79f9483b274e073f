import { join } from 'node:path';
import { postgresqlAddressIn } from '../../data/postgresql-address.js';
import { fingerprint, isFresh, stampWith } from './fingerprint.js';
import { installPackages } from './install.js';
import { step } from './step.js';

const CLIENT_SOURCES = [
  ...['prisma/schema.prisma', 'prisma/postgresql-schema.js', 'prisma/generate.js', 'prisma/config.ts'],
  'package-lock.json',
];
const APP_SOURCES = ['app', 'lib', 'shared', 'public', 'prisma/schema.prisma', 'proxy.ts', 'instrumentation.ts'];
const BUILD_SOURCES = [...APP_SOURCES, 'next.config.js', 'tsconfig.json', 'package-lock.json'];

/** Packages and database client, each made only when missing or made from other sources. */
export async function prepareCode(root) {
  await installPackages(root);
  const stamp = join(root, 'prisma/generated/.made-from');
  const mark = fingerprint(root, CLIENT_SOURCES);
  if (isFresh(stamp, mark)) return;
  await step('Writing the database client', ['prisma/generate.js'], {
    root,
    mend: 'This is a fault in the program: please report it with these lines.',
  });
  stampWith(stamp, mark);
}

/** Migrations, and the demo shop where there is no shop yet. Both leave a database that needs nothing alone. */
export async function prepareData(root, folder) {
  const env = { DATA_DIR: folder };
  const mend = postgresqlAddressIn(process.env)
    ? 'The PostgreSQL database that DATABASE_URL names was left as it was. Mend what the lines above say, then run npm start again.'
    : `The data in ${folder} was left as it was. If it was copied here, copy it again while the shop is stopped.`;
  await step('Bringing the database up to date', [...WITH_TYPES, 'prisma/migrate.ts'], { root, env, mend });
  await step('Looking for a shop', [...WITH_TYPES, 'prisma/seed.ts'], { root, env, mend });
}

/** The built pages, made again when any source changed. `always` builds even when nothing did. */
export async function prepareBuild(root, always = false) {
  const folder = process.env.BUILD_DIR || '.next';
  const stamp = join(root, folder, 'made-from');
  const mark = fingerprint(root, BUILD_SOURCES);
  if (!always && isFresh(stamp, mark)) return;
  await step('Building the pages (a minute the first time)', ['node_modules/next/dist/bin/next', 'build'], {
    root,
    env: { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' },
    mend: 'If you changed the program, mend what the lines above name. If not, delete the folder .next and run npm start again.',
  });
  stampWith(stamp, mark);
}

/** Node's arguments for a TypeScript file that is for the server only. */
export const WITH_TYPES = ['--import', 'tsx', '--conditions=react-server'];
