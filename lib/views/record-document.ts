import 'server-only';
import { type Instant, instantOf, instantText } from '@/shared/time/instant';
import type { OpeningConfirmed } from '../data/openings-confirmed';
import type { Draw } from '../data/record-draws';
import type { RecordVersion } from '../data/record-versions';
import type { RecordsAccepted } from '../data/records-accepted';
import { plainMoney, plainStock } from '../engine/exchange/plain-text';
import { longestRecorded } from '../engine/keepout/reopening';
import { nameIn } from '../engine/name-in';
import { NO_HASH } from '../engine/record/seal-text';
import type { BookRecord, RecordBook, RecordsWhole } from './record-book';

const RECORDS_FORMAT = 'bench-and-bottle/records@1';

export type RecordsDocument = ReturnType<typeof recordsDocument>;
export type RecordDocument = ReturnType<typeof recordDocument>;
export type VersionDocument = RecordDocument['versions'][number];

/** A book with what stands in no page of it. */
type WholeBook = RecordBook & RecordsWhole;

/** Records with every version of each, as they are exported: moments with the offset of the shop's zone, amounts with their unit. */
export const recordsDocument = (book: WholeBook, records: readonly BookRecord[], beside: Beside, now: Instant) => ({
  format: RECORDS_FORMAT,
  shop: book.shop.name,
  address: book.shop.address,
  exportedAt: instantText(now, book.shop.zone),
  /** To be compared with one that was printed or exported before. */
  newestHash: book.newestSeal?.hash ?? NO_HASH,
  damage: book.damage,
  records: records.map((record) => recordDocument(book, record)),
  /** The benches that somebody let open earlier, the newest first. */
  openings: beside.openings.map((one) => openingDocument(book, one)),
  /** The breaks of the chain that somebody accepted, the newest first. */
  accepted: beside.accepted.map(({ actor, recordedAt, reason, records: its }) => ({
    ...{ by: actor, at: momentIn(book)(recordedAt), reason },
    records: its.map(({ application, message }) => ({ record: application, message })),
  })),
});

/** What is told beside the records. */
type Beside = { openings: readonly OpeningConfirmed[]; accepted: readonly RecordsAccepted[] };

export type OpeningDocument = ReturnType<typeof openingDocument>;

function openingDocument(book: WholeBook, { bench, wasUntil, opensAt, reason, actor, recordedAt }: OpeningConfirmed) {
  const moment = momentIn(book);
  return {
    bench: { id: bench, name: nameIn(book.shop.benches, bench) },
    /** Null where nobody knew until when it would have stayed closed. */
    closedUntil: moment(wasUntil),
    opensAt: moment(opensAt),
    ...{ by: actor, at: moment(recordedAt), reason },
  };
}

export const recordDocument = (book: WholeBook, record: BookRecord) => ({
  id: record.id,
  state: record.counting,
  mustBeKeptUntil: record.keptUntil,
  missing: record.missing,
  drawnFrom: book.drawn(record.id).map(drawnDocument),
  versions: record.versions.map((version) => versionDocument(book, version)),
});

const drawnDocument = ({ product, lotId, place, packText, amount, form }: Draw) => ({
  ...{ product, lot: lotId, number: place + 1, pack: packText },
  amount: plainStock(amount, form),
});

function versionDocument(book: WholeBook, version: RecordVersion) {
  const { details, recordedAt, confirmed, isPending } = version;
  const moment = momentIn(book);
  return {
    ...{ version: version.number, enteredBy: version.actor, enteredAt: moment(recordedAt), reason: version.reason },
    ...{ unconfirmed: isPending, withdrawn: details.withdrawn, closedUntil: moment(details.closedUntil) },
    confirmed: confirmed && { by: confirmed.actor, at: moment(confirmed.recordedAt), reason: confirmed.reason },
    recipe: { id: version.recipe, version: version.recipeNumber, name: version.recipeName },
    benches: version.benches.map((id) => ({ id, name: nameIn(book.shop.benches, id) })),
    ...{ crop: details.crop, plants: details.plants, location: details.location },
    ...{ startedAt: moment(version.startedAt), endedAt: moment(version.endedAt), mixedAt: moment(details.mixedAt) },
    applicator: details.by,
    products: productsOf(book, version),
    reiMinutes: longestRecorded(version.products.map(({ reiMinutes }) => reiMinutes)),
    ...spraySaid(book, details),
    passed: details.passed,
    seal: sealDocument(book, version, 'version'),
    confirmationSeal: confirmed && sealDocument(book, version, 'confirmation'),
  };
}

const momentIn =
  ({ shop }: RecordBook) =>
  (instant: number | null): string | null =>
    instant === null ? null : instantText(instantOf(instant), shop.zone);

const productsOf = ({ shop }: RecordBook, { products }: RecordVersion) =>
  products.map(({ product, amount, ...line }) => {
    const today = shop.products.find(({ id }) => id === product);
    const form = today?.form ?? 'liquid';
    return {
      id: product,
      ...line,
      name: line.name ?? today?.name ?? product,
      amount: amount && plainStock(amount, form),
    };
  });

function spraySaid({ shop }: RecordBook, details: RecordVersion['details']) {
  const { sprayed, leftover, acid, plannedCost, cost, pH, temperatureC, conditions, leftoverWent } = details;
  const form = shop.products.find(({ id }) => id === acid?.product)?.form ?? 'liquid';
  return {
    ...{ sprayed: sprayed && plainStock(sprayed, 'liquid'), leftover: leftover && plainStock(leftover, 'liquid') },
    ...{ leftoverWent, conditions, temperatureC, pH },
    acid: acid && { product: acid.product, amount: plainStock(acid.amount, form) },
    ...{ plannedCost: plannedCost && plainMoney(plannedCost), cost: cost && plainMoney(cost) },
  };
}

function sealDocument(book: WholeBook, version: RecordVersion, kind: 'version' | 'confirmation') {
  const seal = book.sealOf(version, kind);
  const text = seal && book.sealed(seal);
  if (!seal || text === null) return null;
  const { number, previousHash, hash } = seal;
  return { line: Number(number), previousHash, hash, text };
}
