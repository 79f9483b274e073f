import 'server-only';
import { BYTE_ORDER_MARK, csvText } from '@/shared/csv/write-rows';
import { isLookedFor, type LogQuery } from '@/shared/forms/log-query';
import { dayOf } from '@/shared/time/zone';
import type { Clock } from '../clock';
import { recordsAccepted } from '../data/records-accepted';
import { openingsFound } from './openings-found';
import { type BookRecord, drawsByRecord, type RecordBook, recordBook, sealedTexts } from './record-book';
import { type RecordDocument, type RecordsDocument, recordDocument, recordsDocument } from './record-document';
import { recordRows } from './records-csv';
import type { InPieces } from './shop-written';

/** The records that are looked for, by what counts of each. */
export const lookedFor = ({ shop, records }: RecordBook, query: LogQuery): BookRecord[] =>
  records.filter(({ newest, versions }) =>
    isLookedFor(query, {
      benches: newest.benches,
      products: newest.products.map(({ product }) => product),
      on: dayOf(shop.zone, newest.startedAt),
      people: [newest.details.by, ...versions.map(({ actor }) => actor)],
    }),
  );

/** Records of a shop with every version, as they are exported. */
export async function recordsExported(shopId: string, query: LogQuery, clock: Clock): Promise<RecordsDocument> {
  const { book, found, beside } = await wholeBook(shopId, query);
  return recordsDocument(book, found, beside, clock.now());
}

async function wholeBook(shopId: string, query: LogQuery) {
  const book = await recordBook(shopId);
  const found = lookedFor(book, query);
  const whole = { drawn: await drawsByRecord(book.shopId, found), sealed: await sealedTexts(book.shopId) };
  const beside = {
    openings: await openingsFound(book.shopId, book.shop, query),
    accepted: await recordsAccepted(book.shopId),
  };
  return { book: { ...book, ...whole }, found, beside };
}

/** In which form records are exported. */
export type RecordsForm = 'json' | 'csv';

/** The same as its text, record by record: years of them are more than should stand in memory at once. */
export async function recordsPieces(
  asked: { shop: string; query: LogQuery; form: RecordsForm },
  clock: Clock,
): Promise<InPieces> {
  const { book, found, beside } = await wholeBook(asked.shop, asked.query);
  const records = each(found, (record) => recordDocument(book, record));
  const without = recordsDocument(book, [], beside, clock.now());
  return { pieces: asked.form === 'csv' ? csvPieces(without, records) : jsonLaidOut(without, records) };
}

function* each<T, Made>(list: Iterable<T>, make: (one: T) => Made): Generator<Made> {
  for (const one of list) yield make(one);
}

function* csvPieces({ openings }: RecordsDocument, records: Iterable<RecordDocument>): Generator<string> {
  const [titles = [], ...opened] = recordRows({ records: [], openings });
  yield BYTE_ORDER_MARK + csvText([titles]);
  for (const record of records) yield csvText(recordRows({ records: [record], openings: [] }).slice(1));
  yield csvText(opened);
}

const NO_RECORDS = '\n  "records": []';

/** A document without its records, and each of them in their place, laid out as the whole document would be. */
function* jsonLaidOut(empty: RecordsDocument, records: Iterable<RecordDocument>): Generator<string> {
  const text = `${JSON.stringify(empty, null, 2)}\n`;
  const at = text.indexOf(NO_RECORDS);
  let before = `${text.slice(0, at)}\n  "records": [\n    `;
  let isEmpty = true;
  for (const record of records) {
    yield before + JSON.stringify(record, null, 2).replaceAll('\n', '\n    ');
    before = ',\n    ';
    isEmpty = false;
  }
  yield isEmpty ? text : `\n  ]${text.slice(at + NO_RECORDS.length)}`;
}
