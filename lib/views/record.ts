import 'server-only';
import { type LogQuery, logPages } from '@/shared/forms/log-query';
import { instantOf, LAST_INSTANT } from '@/shared/time/instant';
import { IN_ANY_YEAR, showDay, showDayUntil } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import type { Draw } from '../data/record-draws';
import type { RecordVersion } from '../data/record-versions';
import { nameIn } from '../engine/name-in';
import type { Missing } from '../engine/record/required';
import { recordFindings } from '../engine/rules/record-findings';
import { lastingAddress } from './bottle-address';
import { pouredText } from './mix-pours';
import { type OpeningSeen, openingsSeen } from './openings-confirmed';
import { type BookRecord, type Counting, drawsByRecord, type RecordBook, recordBook } from './record-book';
import { differing, type Fact, factsOf, inAnyYear, type ProductFact, productFacts, spanText } from './record-facts';
import { type AcceptedSeen, acceptedSeen } from './records-accepted';
import { lookedFor } from './records-exported';
import { shopsAndShown } from './shown-shop';

/** What a form about a record carries unseen: which record, as of which version, and the command's id where no script runs. */
export type AboutRecord = { shopId: string; application: string; version: number; formId: string };

export type VersionSeen = {
  number: number;
  who: string;
  when: string;
  reason: string | null;
  /** What it says otherwise than the one before it. */
  differs: { name: string; from: string | null; to: string | null }[];
  /** Who confirmed it, when and why; null when nobody did, or nobody needs to. */
  confirmed: { who: string; when: string; why: string } | null;
  isPending: boolean;
  /** Until when benches stay closed as long as nobody confirms it; null when nobody knows that. */
  until: string | null;
  seal: { line: string; hash: string } | null;
};

/** A record as a page and paper show it. */
export type RecordSeen = {
  id: string;
  recipe: string;
  when: string;
  counting: Counting;
  /** Whether its newest version withdraws it, confirmed or not: then it can be let count again. */
  isWithdrawn: boolean;
  facts: Fact[];
  products: ProductFact[];
  drawn: { label: string; href: string; amount: string }[];
  passed: { rule: string; reason: string }[];
  /** What it says that ought not to have been: too hot, or too old a mix. */
  findings: string[];
  missing: Missing[];
  keptUntil: string;
  /** The newest version first. */
  versions: VersionSeen[];
};

export type RecordScreen = { record: RecordSeen; about: AboutRecord; damage: string | null };

/** One record of the shop that is looked at. Null when there is none of that id. */
export async function recordScreen(id: string): Promise<RecordScreen | null> {
  const { shown } = await shopsAndShown();
  const book = shown && (await recordBook(shown.id));
  const record = book?.records.find((one) => one.id === id);
  if (!book || !record) return null;
  const about = { shopId: book.shopId, application: id, version: record.newest.number, formId: newCommandId() };
  const drawn = await drawsByRecord(book.shopId, [record]);
  return { record: recordSeen(book, record, drawn(id)), about, damage: book.damage };
}

export function recordSeen(book: RecordBook, record: BookRecord, drawn: readonly Draw[]): RecordSeen {
  const { newest, versions, missing, counting } = record;
  const { zone } = book.shop;
  return {
    ...{ id: record.id, recipe: newest.recipeName, when: spanText(newest, zone), counting, missing },
    isWithdrawn: newest.details.withdrawn,
    facts: factsOf(book, newest),
    products: productFacts(book, newest),
    drawn: drawn.map(({ product, packText, lotId, place, amount, form }) => ({
      label: `${nameIn(book.shop.products, product)}, ${packText}, lot ${lotId} no. ${place + 1}`,
      href: lastingAddress({ lotId, place }),
      amount: pouredText(amount, { form }),
    })),
    passed: newest.details.passed,
    findings: recordFindings(book.shop, record.application).map(({ message }) => message),
    keptUntil: showDay(record.keptUntil, IN_ANY_YEAR),
    versions: versions.map((version, at) => versionSeen(book, version, versions[at - 1] ?? null)).reverse(),
  };
}

function versionSeen(book: RecordBook, version: RecordVersion, before: RecordVersion | null): VersionSeen {
  const { confirmed, isPending, details } = version;
  const { zone } = book.shop;
  const seal = book.sealOf(version);
  const until = details.closedUntil;
  return {
    ...{
      number: version.number,
      who: version.actor,
      when: inAnyYear(version.recordedAt, zone),
      reason: version.reason,
    },
    differs: before ? differing(book, before, version) : [],
    confirmed: confirmed && {
      ...{ who: confirmed.actor, when: inAnyYear(confirmed.recordedAt, zone), why: confirmed.reason },
    },
    isPending,
    until: until === null || until >= LAST_INSTANT ? null : showDayUntil(instantOf(until), zone, IN_ANY_YEAR),
    seal: seal && { line: seal.number, hash: seal.hash },
  };
}

/** As many records as one part of the printed log has; "all" is one part, however long. */
const MOST_ON_PAPER = 100;

/** Records to print, as they are looked for: one part of them, or all. Null when there is no shop. */
export async function printedLog(query: LogQuery, part: number | 'all', clock: Clock): Promise<PrintedLog | null> {
  const { shown } = await shopsAndShown();
  if (!shown) return null;
  const book = await recordBook(shown.id);
  const { name, address, contact, zone } = book.shop;
  const found = lookedFor(book, query);
  const parts = logPages(found.length, MOST_ON_PAPER);
  const at = part === 'all' ? null : Math.min(part, parts);
  const printed = at === null ? found : found.slice((at - 1) * MOST_ON_PAPER, at * MOST_ON_PAPER);
  const drawn = await drawsByRecord(book.shopId, printed);
  return {
    shop: { name, address, contact, zone },
    printedAt: inAnyYear(clock.now(), zone),
    ...{ found: found.length, part: at, parts },
    records: printed.map((record) => recordSeen(book, record, drawn(record.id))),
    newestHash: book.newestSeal?.hash ?? null,
    openings: await openingsSeen(shown.id, book.shop, query),
    accepted: await acceptedSeen(shown.id, book.shop),
    damage: book.damage,
  };
}

export type PrintedLog = {
  shop: { name: string; address: string | null; contact: string | null; zone: string };
  printedAt: string;
  /** How many records are looked for; which part of them is printed, null for all, and how many parts there are. */
  found: number;
  part: number | null;
  parts: number;
  records: RecordSeen[];
  newestHash: string | null;
  openings: OpeningSeen[];
  accepted: AcceptedSeen[];
  damage: string | null;
};
