import type { CsvAsked } from '@/lib/engine/exchange/csv/asked';
import type { CsvList } from '@/lib/engine/exchange/csv/column';
import { csvOfShop } from '@/lib/engine/exchange/csv/csv-of-shop';
import { type CsvPlan, type CsvProgress, csvPlan } from '@/lib/engine/exchange/csv/csv-plan';
import { csvText } from '@/shared/csv/write-rows';
import type { ShopFile } from '@/shared/shop-file/contract';

export type Said = Partial<Omit<CsvAsked, 'list' | 'text'>>;

/** What bringing a text in would do, read to its end; with how far it said it was. */
export function planned(
  shop: ShopFile,
  list: CsvList,
  text: string,
  said: Said = {},
): CsvPlan & { told: CsvProgress[] } {
  const asked = { list, text, columns: null, decimals: null, dayOrder: null, createSuppliers: false, ...said };
  const plan = csvPlan(shop, asked);
  const told: CsvProgress[] = [];
  for (;;) {
    const step = plan.next();
    if (step.done) return { ...step.value, told };
    told.push(step.value);
  }
}

/** The shop as it would be. Throws with the faults when there are some. */
export function resultOf(shop: ShopFile, list: CsvList, text: string, said: Said = {}): ShopFile {
  const plan = planned(shop, list, text, said);
  if (!plan.result) throw new Error(JSON.stringify(plan.faults));
  return plan.result.file;
}

export const exported = (shop: ShopFile, list: CsvList): string => csvText(csvOfShop(shop, list));
