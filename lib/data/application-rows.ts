import 'server-only';
import { plainInstant, plainMoney, plainStock } from '@/lib/engine/exchange/plain-text';
import type { Stock } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { eachInSteps } from '@/shared/steps';
import { isInstant } from '@/shared/time/instant';
import { byOwner } from './by-owner';
import type { Rows } from './database';
import { inForce } from './in-force';
import { AT_ONCE, type Pace } from './pace';
import { type RecordVersion, versionsIn } from './record-versions';

type FileApplication = ShopFile['applications'][number];
/** Reads every version of every record of a shop. */
type ReadRecords = (rows: Rows, shopId: string) => Promise<RecordVersion[]>;

/** How records are read, and how long the reading may go on without a pause. */
export type Reading = { records?: ReadRecords; pace?: Pace };

/** So many records are written out between two pauses. */
const FEW = 50;

type Forms = readonly { id: string; form: string }[];

/**
 * What was sprayed, as a shop file tells it: of each record what counts.
 *
 * Takes    the ids of records, when only those are wanted; and how they are read
 */
export async function applicationsOf(
  rows: Rows,
  shopId: string,
  only: ReadonlySet<string> | null,
  { records = versionsIn, pace = AT_ONCE }: Reading = {},
): Promise<FileApplication[]> {
  const ofShop = await rows.product.findMany({ where: { shopId }, select: { id: true, form: true } });
  const versions = only === null ? await records(rows, shopId) : await versionsIn(rows, shopId, [...only]);
  const ofRecord = byOwner(versions, ({ application }) => application);
  const write = writerOf(ofShop);
  const ids = new Set(versions.map(({ application }) => application));
  const forms = powdersIn(ofShop).join('\n');
  return pace.through(eachInSteps([...ids], FEW, (id) => writtenOnce(ofRecord(id), forms, write)));
}

/** A record as it was written out of its versions, while the same products are powders. */
type WrittenOut = { versions: readonly RecordVersion[]; forms: string; written: FileApplication };
const known = new WeakMap<RecordVersion, WrittenOut>();

/** Versions are kept from one reading to the next, and so is what they come to in a shop file. */
function writtenOnce(versions: RecordVersion[], forms: string, write: ReturnType<typeof writerOf>): FileApplication {
  const newest = versions.at(-1);
  const before = newest && known.get(newest);
  const isSame = before?.forms === forms && before.versions.length === versions.length;
  if (isSame && before.versions.every((one, at) => one === versions[at])) return before.written;
  const written = write(inForce(versions));
  if (newest) known.set(newest, { versions, forms, written });
  return written;
}

const powdersIn = (ofShop: Forms): string[] => ofShop.flatMap(({ id, form }) => (form === 'powder' ? [id] : []));

/** Writes a version of a record as a shop file has it. */
export function writerOf(ofShop: Forms): (version: RecordVersion) => FileApplication {
  const powders = new Set(powdersIn(ofShop));
  const amountText = (product: string, amount: Stock) => plainStock(amount, powders.has(product) ? 'powder' : 'liquid');
  return ({ application, recipe, benches, startedAt, endedAt, products, details }) => {
    const { sprayed, leftover, acid, plannedCost, cost, mixedAt, closedUntil, ...plain } = details;
    return {
      ...{ ...plain, id: application, recipe, benches, startedAt: moment(startedAt), endedAt: momentOr(endedAt) },
      products: products.map(({ amount, ...line }) => ({
        ...line,
        amount: amount === null ? null : amountText(line.product, amount),
      })),
      sprayed: sprayed === null ? null : plainStock(sprayed, 'liquid'),
      leftover: leftover === null ? null : plainStock(leftover, 'liquid'),
      acid: acid && { product: acid.product, amount: amountText(acid.product, acid.amount) },
      plannedCost: plannedCost === null ? null : plainMoney(plannedCost),
      cost: cost === null ? null : plainMoney(cost),
      ...{ mixedAt: momentOr(mixedAt), closedUntil: momentOr(closedUntil) },
    };
  };
}

/** What is no moment gives a text that no file may hold. */
const moment = (at: number): string => (isInstant(at) ? plainInstant(at) : `${at} ms after 1970`);
const momentOr = (at: number | null): string | null => (at === null ? null : moment(at));
