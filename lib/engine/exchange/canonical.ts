import { readMoney } from '@/shared/measure/money';
import type { Reading } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { readClockTime, showClockTime } from '@/shared/time/clock-time';
import { packOf } from './pack-of';
import { plainApplications } from './plain-application';
import { plainMoney, plainStock } from './plain-text';

type FileProduct = ShopFile['products'][number];
type FileLot = ShopFile['lots'][number];

/**
 * A shop file in its one plain form: money, what is left, and moments are written as the export writes them, a full
 * container says nothing about what is left. Two files that mean the same differ at most in what was typed as text:
 * names, pack sizes and doses stay as they are.
 *
 * Takes    a file that passed parsing. Throws RangeError when it did not
 */
export function canonical(file: ShopFile): ShopFile {
  const products = new Map(file.products.map((product) => [product.id, product]));
  return {
    ...file,
    shop: { ...file.shop, wagePerHour: money(file.shop.wagePerHour) },
    suppliers: file.suppliers.map((supplier) => ({
      ...supplier,
      freightPerOrder: money(supplier.freightPerOrder),
      freeFreightOver: money(supplier.freeFreightOver),
      minimumOrder: money(supplier.minimumOrder),
    })),
    offers: file.offers.map((offer) => ({
      ...offer,
      price: money(offer.price),
      breaks: plainBreaks(offer.breaks),
      earlier: offer.earlier.map((was) => ({ ...was, price: money(was.price), breaks: plainBreaks(was.breaks) })),
    })),
    lots: file.lots.map((lot) => ({ ...lot, remaining: remainingOf(lot, products), paid: money(lot.paid) })),
    programs: file.programs.map((program) => ({
      ...program,
      startTime: time(program.startTime),
      changes: program.changes
        .map((change) => ({ ...change, startTime: change.startTime === null ? null : time(change.startTime) }))
        .sort((a, b) => (a.on < b.on ? -1 : 1)),
    })),
    applications: file.applications.map(plainApplications(file, products)),
    orders: file.orders.map((order) => ({
      ...order,
      freight: money(order.freight),
      lines: order.lines.map((line) => ({ ...line, price: money(line.price) })),
    })),
  };
}

const plainBreaks = (breaks: ShopFile['offers'][number]['breaks']) =>
  breaks.map((each) => ({ ...each, price: money(each.price) }));

function remainingOf(lot: FileLot, products: Map<string, FileProduct>): string | null {
  const product = products.get(lot.product);
  // A lot of several is that many full containers, whichever way the file says so.
  if (!product || lot.remaining === null || lot.count > 1) return null;
  const left = packOf(lot.remaining, product);
  return left === null || left === packOf(lot.pack, product) ? null : plainStock(left, product.form);
}

function money<T extends string | null>(text: T): T extends null ? null : string;
function money(text: string | null): string | null {
  return text === null ? null : plainMoney(value(readMoney(text)));
}

const time = (text: string): string => showClockTime(value(readClockTime(text)));

function value<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new RangeError(`canonical: ${reading.message}`);
  return reading.value;
}
