import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig({
  root,
  resolve: {
    alias: { '@': root, 'server-only': fileURLToPath(new URL('./server-only.ts', import.meta.url)) },
  },
  test: {
    include: ['test/**/*.test.{ts,tsx}'],
    exclude: ['test/e2e/**', 'node_modules/**'],
    // A failure is told whole: the test command shows these messages and nothing else.
    chaiConfig: { truncateThreshold: 0 },
    testTimeout: 60_000,
  },
});
