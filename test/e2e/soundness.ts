import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

const EVERY_RULE = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** The rules whose answer another theme can change: those that look at colours. */
const RULES_OF_COLOUR = ['color-contrast', 'link-in-text-block'];

/** What is wrong with a page, as it stands, for whoever reads or uses it otherwise. Empty when nothing is. */
export const wrongWith = (page: Page): Promise<string[]> => ask(page, { type: 'tag', values: EVERY_RULE });

/** The same of its colours alone, for a page that was asked about in another theme just before. */
export const wrongColours = (page: Page): Promise<string[]> => ask(page, { type: 'rule', values: RULES_OF_COLOUR });

async function ask(page: Page, runOnly: { type: 'tag' | 'rule'; values: string[] }): Promise<string[]> {
  // On the way from one page to the next there is no title for a moment.
  await expect(page).toHaveTitle(/./);
  // Legacy means asking the page itself. The other way gathers what frames say in a page made for it, which takes longer
  // than the asking; no page of ours has a frame, and none would be let in.
  const options = { runOnly, resultTypes: ['violations' as const] };
  const { violations } = await new AxeBuilder({ page }).options(options).setLegacyMode().analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join('\n')}`);
}
