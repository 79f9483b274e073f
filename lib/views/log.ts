import 'server-only';
import type { z } from 'zod';
import type { LogQuestion } from '@/shared/api/questions';
import { BYTE_ORDER_MARK, csvText } from '@/shared/csv/write-rows';
import { type LogQuery, logPages } from '@/shared/forms/log-query';
import { accept, type Outcome } from '@/shared/outcome';
import { addDays, type Day, readDay } from '@/shared/time/day';
import type { Clock } from '../clock';
import { firstPlanned } from '../engine/ahead/overdue';
import { nameIn } from '../engine/name-in';
import type { Shop } from '../engine/shop';
import { askedShop } from './asked-shop';
import { type LeftOutSeen, leftOutSeen } from './left-out';
import { type OpeningSeen, openingsSeen } from './openings-confirmed';
import { type BookRecord, type Counting, type RecordBook, recordBook } from './record-book';
import type { RecordsDocument } from './record-document';
import { spanText } from './record-facts';
import { type AcceptedSeen, acceptedSeen } from './records-accepted';
import { recordRows } from './records-csv';
import { lookedFor, recordsExported } from './records-exported';
import { shopsAndShown } from './shown-shop';

/** A record in the list of the log. */
export type LogLine = {
  id: string;
  when: string;
  recipe: string;
  benches: string[];
  products: string[];
  by: string | null;
  counting: Counting;
  amendments: number;
  missing: number;
};

export type LogScreen = {
  query: LogQuery;
  /** How many records there are, and how many of them are looked for. */
  all: number;
  found: number;
  lines: LogLine[];
  /** Which page of them this is, and how many there are. */
  page: number;
  pages: number;
  choices: { benches: Choice[]; products: Choice[] };
  damage: string | null;
  newestHash: string | null;
  /** For how many years records are kept. */
  keepYears: number;
  /** The benches that somebody let open earlier, of those that are looked for: the newest of them. */
  openings: OpeningSeen[];
  /** The breaks of the chain that somebody accepted. */
  accepted: AcceptedSeen[];
  /** What was planned and left out, the latest first; of the days that are looked for. */
  leftOut: LeftOutSeen[];
};
type Choice = { id: string; name: string };

/** As many records as one page shows. */
const MOST_ON_A_PAGE = 100;

/** The log of the shop that is looked at: records, the last one sprayed first. Null when there is no shop. */
export async function logScreen(query: LogQuery, clock: Clock, asked = 1): Promise<LogScreen | null> {
  const { shown } = await shopsAndShown();
  if (!shown) return null;
  const book = await recordBook(shown.id);
  const found = lookedFor(book, query);
  const { shop, records, damage, newestSeal } = book;
  const pages = logPages(found.length, MOST_ON_A_PAGE);
  const page = Math.min(asked, pages);
  return {
    ...{ query, damage, all: records.length, found: found.length, keepYears: shop.keepRecordsYears },
    ...{ page, pages },
    lines: found.slice((page - 1) * MOST_ON_A_PAGE, page * MOST_ON_A_PAGE).map((record) => lineOf(book, record)),
    choices: { benches: shop.benches.map(named), products: sprayedProducts(book) },
    newestHash: newestSeal?.hash ?? null,
    openings: (await openingsSeen(shown.id, shop, query)).slice(0, MOST_ON_A_PAGE),
    accepted: await acceptedSeen(shown.id, shop),
    leftOut: leftOutHere(shop, query, clock.today(shop.zone)),
  };
}

/** Of a bench that is looked for, what was left out there; a product or a person says nothing of what was left out. */
function leftOutHere(shop: Shop, { bench, product, person, from, to }: LogQuery, today: Day): LeftOutSeen[] {
  if (product !== '' || person !== '') return [];
  const day = (text: string, otherwise: Day) => {
    const reading = text === '' ? null : readDay(text);
    return reading?.ok ? reading.value : otherwise;
  };
  const [start, end] = [day(from, firstPlanned(shop, today)), day(to, addDays(today, A_YEAR))];
  const its = leftOutSeen(shop, start, end, today).reverse();
  const name = shop.benches.find(({ id }) => id === bench)?.name;
  return its.filter(({ benches }) => name === undefined || benches.includes(name)).slice(0, MOST_ON_A_PAGE);
}

const A_YEAR = 366;

const named = ({ id, name }: Choice): Choice => ({ id, name });

/** Only what was ever sprayed can be looked for. */
function sprayedProducts({ shop, records }: RecordBook): Choice[] {
  const sprayed = new Set(records.flatMap(({ newest }) => newest.products.map(({ product }) => product)));
  return shop.products.filter(({ id }) => sprayed.has(id)).map(named);
}

function lineOf({ shop }: RecordBook, { id, newest, versions, counting, missing }: BookRecord): LogLine {
  return {
    ...{ id, counting, recipe: newest.recipeName, by: newest.details.by },
    ...{ amendments: versions.length - 1, missing: missing.length },
    when: spanText(newest, shop.zone),
    benches: newest.benches.map((bench) => nameIn(shop.benches, bench)),
    products: newest.products.map(({ product, name }) => name ?? nameIn(shop.products, product)),
  };
}

/** Records with every version, as they are exported. Refuses 'not-found'. */
export async function recordsAnswer(
  { shop, ...query }: z.output<typeof LogQuestion>,
  clock: Clock,
): Promise<Outcome<RecordsDocument>> {
  const asked = await askedShop(shop);
  return asked.ok ? accept(await recordsExported(asked.value.id, query, clock)) : asked;
}

/** The same as a list. Refuses 'not-found'. */
export async function recordsCsv(asked: z.output<typeof LogQuestion>, clock: Clock): Promise<Outcome<string>> {
  const answer = await recordsAnswer(asked, clock);
  return answer.ok ? accept(BYTE_ORDER_MARK + csvText(recordRows(answer.value))) : answer;
}
