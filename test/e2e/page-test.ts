import { test as base, expect, type Page } from '@playwright/test';

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
  page: async ({ page, javaScriptEnabled }, use) => {
    if (javaScriptEnabled !== false) waitUntilAlive(page);
    await use(page);
  },
});

/**
 * From now on a page that is opened or read anew is used only once its scripts listen: a press before that would be lost, and
 * on a busy machine they come late. Whoever says what to wait for waits for that alone.
 */
function waitUntilAlive(page: Page): void {
  const goto = page.goto.bind(page);
  const reload = page.reload.bind(page);
  page.goto = async (url, options) => {
    const answer = await goto(url, options);
    if (!options?.waitUntil) await isAlive(page);
    return answer;
  };
  page.reload = async (options) => {
    const answer = await reload(options);
    await isAlive(page);
    return answer;
  };
}

/** React leaves a mark of its own on what it has taken over. A page whose scripts never come is used as it stands. */
async function isAlive(page: Page): Promise<void> {
  const isMarked = () => {
    const hasScripts = document.querySelector('script[src*="/_next/"]') !== null;
    return !hasScripts || Object.keys(document.body).some((key) => key.startsWith('__reactFiber'));
  };
  await page.waitForFunction(isMarked, undefined, { timeout: 20_000 }).catch(() => {});
}

export { expect };
