import { test as base, expect } from '@playwright/test';

/**
 * The test of every page: it fails when the browser reports an error, a refused script or style, or an exception, even
 * if everything that was looked for is there. A test that is about an error says which one it expects.
 */
export const test = base.extend<{ expectedErrors: RegExp[]; noErrors: undefined }>({
  expectedErrors: [[], { option: true }],
  noErrors: [
    async ({ context, expectedErrors }, use) => {
      const errors: string[] = [];
      context.on('console', (message) => {
        if (message.type() !== 'error') return;
        errors.push(`${message.page()?.url()}: ${message.text()} (${message.location().url})`);
      });
      context.on('weberror', (error) => errors.push(`${error.page()?.url()}: ${error.error().stack}`));
      await use(undefined);
      expect(errors.filter((error) => !expectedErrors.some((expected) => expected.test(error)))).toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
