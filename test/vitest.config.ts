import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

const PURE = ['test/shared', 'test/lib/engine', 'test/outside', 'test/worked', 'test/witness'];
const within = (folder: string) => `${folder}/**/*.test.{ts,tsx}`;

export default defineConfig({
  root,
  resolve: {
    alias: { '@': root, 'server-only': fileURLToPath(new URL('./server-only.ts', import.meta.url)) },
  },
  test: {
    // A failure is told whole: the test command shows these messages and nothing else.
    chaiConfig: { truncateThreshold: 0 },
    testTimeout: process.env.TEST_LONG === '1' ? 3_600_000 : 60_000,
    // Left to itself, vitest keeps one processor for itself, and it hardly needs it.
    maxWorkers: '100%',
    projects: [
      // Nothing pure leaves a trace, so these files may share what one of them has already read in.
      { extends: true, test: { name: 'pure', include: PURE.map(within), isolate: false } },
      {
        extends: true,
        test: {
          name: 'rest',
          include: [within('test')],
          exclude: ['test/e2e/**', 'test/promises/**', ...PURE.map(within)],
        },
      },
    ],
  },
});
