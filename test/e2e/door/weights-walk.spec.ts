import { gzipSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { generatedShop } from '../../bench/generated-shop';
import { expect, test } from '../page-test';
import { bringShop } from './walk';

/*
 * How heavy the pages of a shop of 200 products, 60 programs and 40 benches are. Bytes do not depend on the machine. A page
 * that may be heavier than the others says so here, and may get no heavier.
 */

const MOST_HTML_KB = 300;
const MOST_SCRIPT_KB = 160;

type Weighed = { path: string; html?: number; script?: number };

const ROUTES: Weighed[] = [
  { path: '/today', script: 216 },
  { path: '/week', html: 1_500, script: 188 },
  { path: '/mix', script: 217 },
  { path: '/shelf' },
  { path: '/shelf?as=table' },
  { path: '/shelf?sort=dies&page=3' },
  { path: '/buy', html: 570, script: 328 },
  { path: '/buy?sort=name&page=2', html: 570, script: 328 },
  { path: '/buy/budget', script: 268 },
  { path: '/keep-out', script: 208 },
  { path: '/log' },
  { path: '/log/print' },
  { path: '/setup' },
];

test.describe.configure({ timeout: 240_000 });

test('no page of a large shop is heavier than it may be', async ({ page }) => {
  await bringShop(page, generatedShop({ products: 200, programs: 60, benches: 40 }));
  const heavier: string[] = [];
  for (const { path, html: mostHtml = MOST_HTML_KB, script: mostScript = MOST_SCRIPT_KB } of ROUTES) {
    const { html, script } = await weightOf(page, path);
    console.log(`${path}: ${html} kB of HTML, ${script} kB of compressed script`);
    if (html > mostHtml) heavier.push(`${path}: ${html} kB of HTML, at most ${mostHtml}`);
    if (script > mostScript) heavier.push(`${path}: ${script} kB of compressed script, at most ${mostScript}`);
  }
  expect(heavier).toEqual([]);
});

/** What the page weighs as text, and the scripts that it names, each compressed by itself. In kB. */
async function weightOf(page: Page, path: string): Promise<{ html: number; script: number }> {
  const answer = await page.request.get(path);
  expect(answer.ok(), `${path}: ${answer.status()}`).toBe(true);
  const text = await answer.text();
  const scripts = new Set(
    [...text.matchAll(/<script[^>]*\ssrc="([^"]+)"[^>]*>/g)].flatMap(([tag, src = '']) => scriptIn(tag, src)),
  );
  let bytes = 0;
  for (const src of scripts) bytes += gzipSync(await (await page.request.get(src)).body()).byteLength;
  return { html: kB(Buffer.byteLength(text)), script: kB(bytes) };
}

/** Browsers that know modules never load what is meant for those that do not. */
const scriptIn = (tag: string, src: string): string[] =>
  /\snomodule/i.test(tag) ? [] : [src.replaceAll('&amp;', '&')];

const kB = (bytes: number): number => Math.ceil(bytes / 1_000);
