import 'server-only';
import { BYTE_ORDER_MARK, type CellOut, csvText } from '@/shared/csv/write-rows';
import { orderTyped } from '@/shared/forms/order';
import type { Fields } from '@/shared/forms/rows';
import { type OrderSums, orderSums } from '@/shared/measure/order-sums';
import { priceOfOne } from '@/shared/measure/price-break';
import { showMoneyIfKnown } from '@/shared/measure/show';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { type Micros, micros } from '@/shared/quantity/amounts';
import type { Day } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import { plainMoney } from '../engine/exchange/plain-text';
import { expectedDay } from '../engine/orders/on-order';
import type { Offer, Order, Supplier } from '../engine/shop';
import { linePath } from '../engine/working/order-figures';
import type { Fig, FigAt } from './figures';
import { type HereNow, houseNow, shopNow } from './house';

/** One line of a purchase list. */
type ListLine = {
  key: string;
  offer: string;
  product: string;
  pack: string;
  count: number;
  /** What one pack was quoted at, and what all of them come to; null when nobody noted it. */
  price: Micros | null;
  cost: Micros | null;
};

/** What is to be ordered from one supplier, or was. */
export type PurchaseList = {
  supplier: Pick<Supplier, 'id' | 'name' | 'minimumOrder' | 'freeFreightOver'>;
  /** The order that it is; null for a list that nobody has ordered yet. */
  order: string | null;
  /** The id of the command that places it, for a browser that runs no scripts. */
  formId: string;
  placedOn: Day;
  expectedOn: Day | null;
  lines: ListLine[];
  sums: OrderSums;
  /** The same as figures that open; null for a list that nobody has ordered, whose lines stand above their sums. */
  figures: ListFigures | null;
  note: string | null;
  /** What was entered beside the lines; null: as the supplier has it. */
  entered: { expectedOn: Day | null; freight: Micros | null };
  /** The list as plain text, to be sent. */
  text: string;
  subject: string;
};

/** What an order comes to, each figure with its working. */
type ListFigures = Record<'goods' | 'freight' | 'total' | 'expectedOn' | 'toMinimum' | 'toFreeFreight', Fig> & {
  lines: Fig[];
};

export type PurchaseListScreen = Pick<HereNow, 'today' | 'ways'> & {
  shopId: string;
  shopName: string;
  lists: PurchaseList[];
  /** Lines of the address that are on no list, each with the reason. */
  leftOut: string[];
};

/**
 * A purchase list for each supplier: of one order, of lines that stand in the address, or of all that is on order.
 *
 * Takes    the fields of the address: "order", or lines as the form of an order has them, from any number of suppliers
 */
export async function purchaseLists(clock: Clock, asked: Fields): Promise<PurchaseListScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { shop, today, ways } = here;
  const isDraft = Object.keys(asked).some((name) => name.startsWith('lines['));
  const { orders, leftOut } = isDraft ? draftsIn(here, asked) : { orders: ordersIn(shop, asked), leftOut: [] };
  const figure = isDraft ? null : ((await houseNow(clock))?.figure ?? null);
  const lists = orders.map((order) => ({
    ...listOf(here, order, isDraft),
    figures: figure && figuresIn(figure, order),
  }));
  return { ...{ today, ways, shopId: here.id, shopName: shop.name }, lists, leftOut };
}

const ordersIn = ({ orders }: HereNow['shop'], asked: Fields): Order[] =>
  orders.filter(({ id, closedOn }) => (asked.order ? id === asked.order : closedOn === null));

/** Lines that nobody has ordered yet, as an order to each supplier. What cannot be read is left out, and said to be. */
function draftsIn({ shop, today }: HereNow, asked: Fields): { orders: Order[]; leftOut: string[] } {
  const { typed, faults } = orderTyped(asked);
  const lines = typed.lines.flatMap(({ offer: id, count, price }) => {
    const offer = shop.offers.find((one) => one.id === id);
    return offer ? [{ offer, count, price: price ?? priceOfOne(offer, count), received: 0 }] : [];
  });
  const suppliers = [...new Set(lines.map(({ offer }) => offer.supplier))];
  const { expectedOn, freight, note } = typed;
  const alone =
    suppliers.length === 1 ? { expectedOn, freight, note } : { expectedOn: null, freight: null, note: null };
  const orders = suppliers.map((supplier) => ({
    ...{ id: '', supplier, placedOn: typed.placedOn ?? today, closedOn: null, ...alone },
    lines: lines.filter(({ offer }) => offer.supplier === supplier),
  }));
  const gone = typed.lines.filter(({ offer: id }) => !shop.offers.some((one) => one.id === id));
  return {
    orders,
    leftOut: [
      ...faults.map(({ path, message }) => leftOutWords(shop, asked, path, message)),
      ...gone.map(({ count, offer }) => `${count} packs of “${offer}”: this is no longer offered.`),
    ],
  };
}

/** What was typed into a field that cannot be read, of which offer it speaks, and what to write instead. */
function leftOutWords({ offers }: HereNow['shop'], asked: Fields, path: string, message: string): string {
  const [, row] = /^lines\[(\d+)\]/.exec(path) ?? [];
  const offer = offers.find(({ id }) => id === asked[`lines[${row}].offer`]);
  return `“${asked[path] ?? ''}”${offer ? ` at ${offer.product.name}, ${offer.packText}` : ''}: ${message}`;
}

function figuresIn(figure: FigAt, order: Order): ListFigures {
  const its = (what: string) => figure('order', order.id, what);
  return {
    ...{ goods: its('goods'), freight: its('freight'), total: its('total'), expectedOn: its('expectedOn') },
    ...{ toMinimum: its('toMinimum'), toFreeFreight: its('toFreeFreight') },
    lines: order.lines.map((line) => figure(...linePath(order, line))),
  };
}

function listOf({ shop, ways }: HereNow, order: Order, isDraft: boolean): Omit<PurchaseList, 'figures'> {
  const { supplier, placedOn, note } = order;
  const { id, name, minimumOrder, freeFreightOver } = supplier;
  const lines = order.lines.map(({ offer, count, price }, place) => {
    return { key: `${place} ${offer.id}`, ...lineOf(offer, count, price) };
  });
  const sums = orderSums(lines, supplier, order.freight);
  const list = {
    supplier: { id, name, minimumOrder, freeFreightOver },
    order: isDraft ? null : order.id,
    note,
    formId: newCommandId(),
  };
  const { expectedOn, freight } = order;
  const days = { placedOn, expectedOn: expectedDay(order), entered: { expectedOn, freight } };
  const subject = `Order from ${shop.name}, ${showDay(placedOn)} ${placedOn.slice(0, 4)}`;
  return { ...list, ...days, lines, sums, subject, text: textOf(shop, name, lines, sums, note, ways.currency) };
}

const lineOf = (offer: Offer, count: number, price: Micros | null): Omit<ListLine, 'key'> => ({
  ...{ offer: offer.id, product: offer.product.name, pack: offer.packText, count, price },
  cost: price === null ? null : micros(price * count),
});

/** The list as it is sent: nothing in it but what the supplier needs. */
function textOf(
  { name, address, contact }: HereNow['shop'],
  supplier: string,
  lines: ListLine[],
  { goods, freight, total }: OrderSums,
  note: string | null,
  currency: string,
): string {
  const money = (cost: Micros | null) => showMoneyIfKnown(cost, currency);
  return [
    `To ${supplier}`,
    '',
    'Please send:',
    ...lines.map(({ product, pack, count, price, cost }) => {
      const quoted = price === null ? '' : ` at ${money(price)}: ${money(cost)}`;
      return `${count} x ${product}, ${pack}${quoted}`;
    }),
    '',
    `Goods ${money(goods)}`,
    `Freight ${money(freight)}`,
    `In all ${money(total)}`,
    ...(note === null ? [] : ['', note]),
    '',
    name,
    ...(address === null ? [] : [address]),
    ...(contact === null ? [] : [contact]),
  ].join('\r\n');
}

const HEADER = ['Supplier', 'Product', 'Pack', 'Packs', 'Price of one', 'Cost'];

/** The same lists as comma-separated values, one line for each product. Refuses 'not-found'. */
export async function purchaseListCsv(clock: Clock, asked: Fields): Promise<Outcome<string>> {
  const screen = await purchaseLists(clock, asked);
  if (!screen) return refuse({ code: 'not-found', what: 'shop', id: '' });
  const rows = screen.lists.flatMap(({ supplier, lines }) =>
    lines.map(({ product, pack, count, price, cost }): CellOut[] => [
      ...[supplier.name, product, pack, count],
      ...[price, cost].map((one) => (one === null ? null : Number(plainMoney(one)))),
    ]),
  );
  return accept(BYTE_ORDER_MARK + csvText([HEADER, ...rows]));
}
