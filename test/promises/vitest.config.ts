import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The tests that run the built program and break it. One after another: each of them times out a busy machine's server. */
export default defineConfig({
  root,
  resolve: {
    alias: { '@': root, 'server-only': fileURLToPath(new URL('../server-only.ts', import.meta.url)) },
  },
  test: {
    include: ['test/promises/*.test.ts'],
    fileParallelism: false,
    testTimeout: 300_000,
    hookTimeout: 120_000,
    chaiConfig: { truncateThreshold: 0 },
  },
});
