import 'server-only';
import type { CsvPreviewAnswer } from '@/shared/api/csv-bodies';
import { accept, type Outcome } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { fingerprint } from '../data/fingerprint';
import { shopFileOf } from '../data/snapshot';
import type { CollectionChange } from '../engine/exchange/compare';
import type { CsvAsked } from '../engine/exchange/csv/asked';
import type { CsvList } from '../engine/exchange/csv/column';
import { cellOfField } from '../engine/exchange/csv/csv-of-shop';
import { type CsvPlan, csvPlan } from '../engine/exchange/csv/csv-plan';
import { COLUMNS } from '../engine/exchange/csv/list-columns';

/**
 * What bringing a CSV list in would add and change, before anything is changed.
 *
 * Takes    the shop, the list with what somebody said about it, and how to say how far it is
 * Gives    every fault with its line and column, as part of the answer: the way to put some of them right is to choose a
 *          column or to answer what the file leaves open
 */
export async function csvPreviewOf(
  { id, name }: { id: string; name: string },
  asked: CsvAsked,
  tell: (step: object) => Promise<void>,
): Promise<Outcome<CsvPreviewAnswer>> {
  const current = await shopFileOf(id);
  const plan = csvPlan(current, asked);
  for (let step = plan.next(); ; step = plan.next()) {
    if (step.done) return accept(previewOf(name, asked, step.value, fingerprint(current)));
    await tell(step.value);
  }
}

function previewOf(shopName: string, { list }: CsvAsked, plan: CsvPlan, fingerprint: string): CsvPreviewAnswer {
  const { result, lineOf, ...said } = plan;
  const change: CollectionChange = result?.comparison.collections[list] ?? NO_CHANGE;
  const cell = result && cellOfField(result.file, list);
  const called = result ? callsIn(result.file, list) : (id: string) => id;
  const thing = ({ id, name }: { id: string; name: string | null }) => {
    return { line: lineOf.get(id) ?? null, id, name: name ?? called(id) };
  };
  return {
    ...said,
    ...{ shopName, list, fingerprint },
    choices: COLUMNS[list].map(({ field, title, isNeeded }) => ({ field, title, isNeeded })),
    added: change.added.map(thing),
    changed: change.changed.map((each) => ({
      ...thing(each),
      fields: each.fields.map(({ field, from, to }) => {
        const was = cell?.(field, from) ?? { title: field, cell: from };
        return { field: was.title, from: was.cell, to: cell ? cell(field, to).cell : to };
      }),
    })),
    unchanged: change.unchanged.filter(({ id }) => lineOf.has(id)).length,
  };
}

const NO_CHANGE: CollectionChange = { added: [], changed: [], unchanged: [], leftAlone: [] };

/** An offer or a lot by what it is of, since neither has a name. */
function callsIn(shop: ShopFile, list: CsvList): (id: string) => string {
  const products = new Map(shop.products.map(({ id, name }) => [id, name]));
  const suppliers = new Map(shop.suppliers.map(({ id, name }) => [id, name]));
  const offers = shop.offers.map(({ id, product, pack, supplier }) => {
    return [id, `${products.get(product)}, ${pack}, from ${suppliers.get(supplier)}`] as const;
  });
  const lots = shop.lots.map(({ id, product, pack }) => [id, `${products.get(product)}, ${pack}`] as const);
  const names = new Map(list === 'offers' ? offers : lots);
  return (id) => names.get(id) ?? id;
}
