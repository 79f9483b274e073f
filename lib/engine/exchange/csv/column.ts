import type { ShopFile } from '@/shared/shop-file/contract';

/** The lists of a shop that come and go as CSV. */
export const CSV_LISTS = ['products', 'offers', 'lots'] as const;
export type CsvList = (typeof CSV_LISTS)[number];

/** One thing of such a list. */
export type Thing = ShopFile[CsvList][number];

/**
 * How the text of a cell becomes a value.
 *
 *   words     as it stands                   number    a number, whole or not       yesNo      yes or no
 *   choice    one of a few words             money     an amount of money           day        a calendar day
 *   amount    a size with its unit           names     words; words                 breaks     from: price; …
 *   contents  substance amount basis; …      rates     use: lowest to highest; …
 *   product, supplier                        by id or by name
 */
export type Kind =
  | {
      of: 'number' /** The number of its unit in a text with another unit: "2 years" in days. */;
      plain?: (text: string) => string;
    }
  | { of: 'words' | 'money' | 'amount' | 'day' | 'yesNo' | 'names' | 'contents' | 'rates' | 'breaks' }
  | { of: 'choice'; words: readonly string[] }
  | { of: 'product' | 'supplier' };

/** A column that a list may have. */
export type Column = {
  /** The field of the shop file, which names the column in the HTTP API. */
  field: string;
  /** What the export calls it. */
  title: string;
  /** What people call it besides. */
  also: readonly string[];
  /** Where the value stands in the thing. */
  path: readonly string[];
  kind: Kind;
  /** Whether every line must say it. */
  isNeeded: boolean;
};

/** Kinds that hold several values. They may be spread over numbered columns: "content 1", "content 2". */
export const holdsSeveral = ({ of }: Kind): boolean => ['names', 'contents', 'rates', 'breaks'].includes(of);

/** The name of a column without what people write differently: case, accents, spaces and signs. */
export const plainName = (name: string): string =>
  name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]/gu, '');

/**
 * A column.
 *
 * Takes    what the export calls it, the path of its field in the thing, its kind, and what people call it besides
 */
export const column = (title: string, path: string, kind: Kind, also: readonly string[] = []): Column => {
  const steps = path.split('.');
  return { field: path, title, also, path: steps, kind, isNeeded: false };
};

/** The same column, which every line must fill. */
export const needed = (each: Column): Column => ({ ...each, isNeeded: true });
