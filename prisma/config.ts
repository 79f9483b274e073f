import { defineConfig } from 'prisma/config';

/** For Prisma's own command line, as in `npx prisma migrate status --config prisma/config.ts`. The app itself does not read it. */
export default defineConfig({
  schema: 'schema.prisma',
  migrations: { path: 'migrations' },
  datasource: { url: `file:${process.env.DATA_DIR ?? '../data'}/shop.db` },
});
