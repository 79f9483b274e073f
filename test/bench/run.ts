import { cpus } from 'node:os';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { planDocument } from '@/lib/engine/ahead/plan-document';
import { projectionOf } from '@/lib/engine/ahead/projection';
import { flagsOf } from '@/lib/engine/rules/all-rules';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { parseShopFile } from '@/shared/shop-file/parse';
import { reportOnBuying } from './buying';
import { demandTable, straightLoop, TODAY } from './demand-table';
import { generatedShop } from './generated-shop';
import { reportOnLargeFile } from './large-file';
import { reportOnRequests } from './requests';
import { fetchSpreadsheet, workbookOf } from './spreadsheet';
import { inMs, type Timing, timed } from './timing';
import { reportOnWhatIf } from './what-if';

/*
 * How long the plan of a large shop takes, how that grows, and how it stands beside a spreadsheet. It reports; it never
 * fails on a time.
 */

const WEEKS = 52;
const WHOLE = { products: 200, programs: 60, benches: 40 };

console.log(
  `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model}; ${WEEKS} weeks; median (least to most)\n`,
);
for (const times of [0.5, 1, 2, 5, 10]) reportOn(times);
compareWithSpreadsheet(shopOfSize(1));
await reportOnLargeFile();
await reportOnBuying();
await reportOnWhatIf();
await reportOnRequests();

function shopOfSize(times: number): Shop {
  const { products, programs, benches } = WHOLE;
  const size = { products: products * times, programs: programs * times, benches: benches * times };
  const parsed = parseShopFile(JSON.stringify(generatedShop(size)));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults.slice(0, 3)));
  return shopOfFile(parsed.file);
}

function reportOn(times: number): void {
  const text = JSON.stringify(generatedShop({ products: 200 * times, programs: 60 * times, benches: 40 * times }));
  const shop = shopOfSize(times);
  const [runs, warmUp] = times > 2 ? [5, 1] : [15, 5];
  const time = (work: () => unknown): Timing => timed(work, runs, warmUp);
  const before = process.memoryUsage().heapUsed;
  const plan = planAhead(shop, TODAY, WEEKS);
  const grown = (process.memoryUsage().heapUsed - before) / 1e6;
  console.log(
    `${shop.products.length} products, ${shop.programs.length} programs, ${shop.benches.length} benches: ${plan.sprayings.length} sprayings, ${plan.flags.length} flags`,
  );
  console.log(`  read and check the file      ${inMs(time(() => parseShopFile(text)))}`);
  console.log(`  demand table                 ${inMs(time(() => demandTable(shop, WEEKS)))}`);
  console.log(`  the same by a straight loop  ${inMs(time(straightLoop(shop, WEEKS)))}`);
  console.log(`  projection with all costs    ${inMs(time(() => projectionOf(shop, TODAY, WEEKS)))}`);
  console.log(`  the flag rules on top        ${inMs(time(() => flagsOf(plan)))}`);
  console.log(`  the document, with sentences ${inMs(time(() => planDocument(plan)))}`);
  console.log(
    `  memory: ${grown.toFixed(1)} MB for the plan, ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB for the process\n`,
  );
}

function compareWithSpreadsheet(shop: Shop): void {
  const spreadsheet = fetchSpreadsheet();
  if (!spreadsheet) return;
  const undying = withoutLives(shop);
  const sheets = workbookOf(undying, WEEKS);
  const options = { licenseKey: 'gpl-v3' };
  const theirs = timed(() => spreadsheet.buildFromSheets(sheets, options).destroy(), 5, 1);
  const ours = timed(() => projectionOf(undying, TODAY, WEEKS), 15, 5);
  console.log('The same need and stock of 200 products in a general-purpose spreadsheet engine (no lives, no costs):');
  console.log(`  spreadsheet, build and calculate ${inMs(theirs)}`);
  console.log(`  ours, with draws and costs       ${inMs(ours)}`);
  console.log(`  ratio of the medians             ${(theirs.median / ours.median).toFixed(0)} : 1`);
  console.log(
    `  largest difference in any cell   ${largestDifference(spreadsheet.buildFromSheets(sheets, options), undying)} µL`,
  );
}

/** The shop as a spreadsheet sees it: nothing dies, and a shortage leaves an empty shelf. */
function withoutLives(shop: Shop): Shop {
  for (const product of shop.products) product.shelfLife = { unopenedDays: null, openedDays: null };
  for (const container of shop.containers) container.expiresOn = null;
  return shop;
}

function largestDifference(
  engine: ReturnType<NonNullable<ReturnType<typeof fetchSpreadsheet>>['buildFromSheets']>,
  shop: Shop,
): number {
  const [need, stock] = [engine.getSheetId('Need'), engine.getSheetId('Stock')];
  let largest = 0;
  for (const [row, { weeks }] of projectionOf(shop, TODAY, WEEKS).products.entries()) {
    for (const [col, week] of weeks.entries()) {
      const theirNeed = Number(engine.getCellValue({ sheet: need, row, col }));
      const theirStock = Number(engine.getCellValue({ sheet: stock, row, col: col + 1 }));
      largest = Math.max(largest, Math.abs(theirNeed - week.needAtLeast), Math.abs(theirStock - week.closing));
    }
  }
  return largest;
}
