import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Shop } from '@/lib/engine/shop';
import { demandTable } from './demand-table';

/*
 * The same table in a general-purpose spreadsheet engine. The engine is fetched by the benchmark alone, into a folder of
 * the system's for passing things: its licence does not fit this project's, and the program never depends on it.
 */

const PACKAGE = 'hyperformula@3.5.0';
const FOLDER = join(tmpdir(), 'bench-and-bottle-spreadsheet');

type Cells = (string | number)[][];
type Sheets = Record<string, Cells>;
type Engine = {
  getCellValue(at: { sheet: number; row: number; col: number }): unknown;
  getSheetId(name: string): number;
  destroy(): void;
};
export type Spreadsheet = { buildFromSheets(sheets: Sheets, options: { licenseKey: string }): Engine };

/** The spreadsheet engine, or null with the reason printed when it cannot be fetched here. */
export function fetchSpreadsheet(): Spreadsheet | null {
  try {
    if (!existsSync(join(FOLDER, 'node_modules'))) {
      mkdirSync(FOLDER, { recursive: true });
      writeFileSync(join(FOLDER, 'package.json'), '{ "private": true }');
      execFileSync('npm', ['install', '--no-audit', '--no-fund', PACKAGE], { cwd: FOLDER, stdio: 'ignore' });
    }
    return createRequire(join(FOLDER, 'package.json'))('hyperformula').HyperFormula as Spreadsheet;
  } catch (error) {
    console.log(`The spreadsheet engine could not be fetched, so there is nothing to compare with: ${error}`);
    return null;
  }
}

/**
 * A workbook for the shop: what each program takes of each product each time, how often it runs in each week, the need
 * of each product and week as a formula over the two, and the stock at the end of each week as a formula over that.
 */
export function workbookOf(shop: Shop, weeks: number): Sheets {
  const needs = shop.programs.map((program) => demandTable({ ...shop, programs: [program] }, weeks));
  const programs = shop.programs.length;
  const sheets = { Each: [] as Cells, Often: [] as Cells, Need: [] as Cells, Stock: [] as Cells };
  const { Each, Often, Need, Stock } = sheets;
  for (const [row, product] of shop.products.entries()) {
    const weekly = needs.map((need) => [...need.subarray(row * weeks, (row + 1) * weeks)]);
    Each.push(weekly.map((one) => Math.max(...one)));
    const range = `Each!$A${row + 1}:$${columnName(programs - 1)}${row + 1}`;
    Need.push(
      Array.from(
        { length: weeks },
        (_, week) => `=SUMPRODUCT(${range},Often!$A${week + 1}:$${columnName(programs - 1)}${week + 1})`,
      ),
    );
    const held = shop.containers.filter((one) => one.product === product).reduce((sum, one) => sum + one.remaining, 0);
    Stock.push([
      held,
      ...Array.from(
        { length: weeks },
        (_, week) => `=MAX(0,${columnName(week)}${row + 1}-Need!${columnName(week)}${row + 1})`,
      ),
    ]);
  }
  for (let week = 0; week < weeks; week += 1) {
    Often.push(needs.map((need) => timesIn(need, weeks, week)));
  }
  return sheets;
}

/** How often a program runs in a week, read off the first product that it takes. */
function timesIn(need: Float64Array, weeks: number, week: number): number {
  const row = need.findIndex((amount) => amount > 0);
  if (row < 0) return 0;
  const first = Math.floor(row / weeks) * weeks;
  const each = Math.max(...need.subarray(first, first + weeks));
  return Math.round((need[first + week] ?? 0) / each);
}

function columnName(index: number): string {
  const letter = String.fromCharCode(65 + (index % 26));
  return index < 26 ? letter : columnName(Math.floor(index / 26) - 1) + letter;
}
