import 'server-only';
import { plainInstant, plainMoney, plainStock } from '@/lib/engine/exchange/plain-text';
import type { Stock } from '@/shared/quantity/amounts';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type Instant, instantOf } from '@/shared/time/instant';
import { byOwner } from './by-owner';
import type { Rows } from './database';
import { inForce } from './in-force';
import { type RecordVersion, versionsIn } from './record-versions';

type FileApplication = ShopFile['applications'][number];
type Forms = readonly { id: string; form: string }[];

/**
 * What was sprayed, as a shop file tells it: of each record what counts.
 *
 * Takes    the shop's products, whose form says what an amount is counted in
 */
export async function applicationsOf(rows: Rows, shopId: string, ofShop: Forms): Promise<FileApplication[]> {
  const versions = await versionsIn(rows, shopId);
  const ofRecord = byOwner(versions, ({ application }) => application);
  const write = writerOf(ofShop);
  const ids = new Set(versions.map(({ application }) => application));
  return [...ids].map((id) => write(inForce(ofRecord(id))));
}

/** Writes a version of a record as a shop file has it. */
export function writerOf(ofShop: Forms): (version: RecordVersion) => FileApplication {
  const powders = new Set(ofShop.flatMap(({ id, form }) => (form === 'powder' ? [id] : [])));
  const amountText = (product: string, amount: Stock) => plainStock(amount, powders.has(product) ? 'powder' : 'liquid');
  return ({ application, recipe, benches, startedAt, endedAt, products, details }) => {
    const { sprayed, leftover, acid, plannedCost, cost, mixedAt, closedUntil, ...plain } = details;
    return {
      ...{ ...plain, id: application, recipe, benches, startedAt: plainInstant(startedAt), endedAt: moment(endedAt) },
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

const moment = (instant: Instant | null): string | null => (instant === null ? null : plainInstant(instant));
const momentOr = (instant: number | null): string | null => (instant === null ? null : moment(instantOf(instant)));
