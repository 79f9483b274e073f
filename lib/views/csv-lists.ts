import 'server-only';
import type { z } from 'zod';
import type { CsvQuestion, TemplateQuestion } from '@/shared/api/csv-bodies';
import { BYTE_ORDER_MARK, csvText } from '@/shared/csv/write-rows';
import { accept, type Outcome } from '@/shared/outcome';
import { shopFileOf } from '../data/snapshot';
import type { CsvList } from '../engine/exchange/csv/column';
import { csvOfShop } from '../engine/exchange/csv/csv-of-shop';
import { TEMPLATES } from '../engine/exchange/csv/templates';
import { askedShop } from './asked-shop';

/** A list of a shop as a CSV file, which spreadsheets read as UTF-8. Refuses 'not-found'. */
export async function csvOut(list: CsvList, { shop }: z.output<typeof CsvQuestion>): Promise<Outcome<string>> {
  const found = await askedShop(shop);
  if (!found.ok) return found;
  return accept(BYTE_ORDER_MARK + csvText(csvOfShop(await shopFileOf(found.value.id), list)));
}

/** A list to begin with: its header, and two lines to write over. */
export const csvTemplate = ({ list }: z.output<typeof TemplateQuestion>): string =>
  BYTE_ORDER_MARK + csvText(TEMPLATES[list]);
