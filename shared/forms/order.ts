import { z } from 'zod';
import { moneyText, readMoney } from '../measure/money';
import { plainMoney } from '../measure/money-written';
import { priceOfOne } from '../measure/price-break';
import { type Fault, type Reading, read } from '../outcome';
import type { Micros } from '../quantity/amounts';
import type { ShopFile, Written } from '../shop-file/contract';
import { packsCame } from '../shop-file/packs-came';
import { type Day, readDay } from '../time/day';
import { commandId, fingerprint, shopId } from './command-fields';
import { type Fields, writtenRows } from './rows';

type FileOrder = ShopFile['orders'][number];
type FileOffer = ShopFile['offers'][number];

/** One line of an order as it was typed. */
type OrderLineTyped = { row: number; offer: string; count: number; price: Micros | null };

/** An order as it was typed. Whatever was left empty is null: the price as it is offered, the day as it takes them. */
export type OrderTyped = {
  lines: OrderLineTyped[];
  placedOn: Day | null;
  expectedOn: Day | null;
  freight: Micros | null;
  note: string | null;
};

const LINE = /^lines\[\d{1,3}\]\.(offer|count|price)$/;
const COUNT = 'Write a whole number of packs, from 1 to 10000, or leave it empty.';
const TOO_OLD = 'This form is too old. Reload the page and enter it again.';

/**
 * What a form, or an address, says of an order. The fields are "lines[0].offer", "lines[0].count" and "lines[0].price",
 * and so on for each line; a line without a count means nothing. "placedOn", "expectedOn", "freight" and "note" may be
 * left out.
 *
 * Gives    what can be read, and what is wrong with the rest, each at its field. A line that cannot be read whole is no
 *          line: nobody said how many, or at which price
 */
export function orderTyped(fields: Fields): { typed: OrderTyped; faults: Fault[] } {
  const faults: Fault[] = [];
  const field = <T>(name: string, reader: (text: string) => Reading<T>): T | null => {
    const text = (fields[name] ?? '').trim();
    const reading = text === '' ? read(null) : reader(text);
    if (reading.ok) return reading.value;
    faults.push({ path: name, message: reading.message });
    return null;
  };
  const money = (text: string) => readMoney(plainMoney(text, fields.currency ?? ''));
  const rows = writtenRows(fields, 'lines', ['.count']).filter((row) => fields[`lines[${row}].count`]?.trim() !== '0');
  const lines = rows.flatMap((row): OrderLineTyped[] => {
    const at = (part: string) => `lines[${row}].${part}`;
    const before = faults.length;
    const [count, price] = [field(at('count'), readCount), field(at('price'), money)];
    if (count === null || faults.length > before) return [];
    return [{ row, offer: fields[at('offer')] ?? '', count, price }];
  });
  const days = { placedOn: field('placedOn', readDay), expectedOn: field('expectedOn', readDay) };
  const note = (fields.note ?? '').trim();
  if (note.length > 500) faults.push({ path: 'note', message: 'Shorten this to 500 characters.' });
  return { typed: { lines, ...days, freight: field('freight', money), note: note || null }, faults };
}

function readCount(text: string): Reading<number> {
  const count = /^\d{1,5}$/.test(text) ? Number(text) : 0;
  return count >= 1 && count <= 10_000 ? read(count) : { ok: false, message: COUNT };
}

const Single = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  /** Empty for a new one. */
  id: z.string().max(64).default(''),
  standing: z.union([fingerprint(), z.literal('')]).default(''),
  supplier: z.string().min(1, { error: 'Choose who sells.' }).max(64),
  /** In which currency its prices are, for the signs that people write beside them. */
  currency: z.string().max(3).default(''),
});

const ASIDE = ['placedOn', 'expectedOn', 'freight', 'note'];

/** The form of an order. */
export const OrderForm = z
  .record(z.string(), z.string({ error: TOO_OLD }).max(2_000, { error: 'Shorten this.' }))
  .transform((fields, context) => {
    const own = Object.entries(fields).filter(([name]) => !LINE.test(name) && !ASIDE.includes(name));
    const single = Single.safeParse(Object.fromEntries(own));
    const { typed, faults } = orderTyped(fields);
    const wrong = (single.error?.issues ?? []).map(({ path, message }) => ({ path: String(path[0]), message }));
    for (const { path, message } of [...wrong, ...faults])
      context.addIssue({ code: 'custom', message, path: path === 'undefined' ? [] : [path] });
    if (!single.success || faults.length > 0) return z.NEVER;
    return { ...single.data, ...typed };
  });
export type OrderForm = z.output<typeof OrderForm>;

/**
 * An order as the shop file writes it, from its form.
 *
 * Takes    the form, the shop as it stands, and today, on which it was ordered when no day is said. A line without a
 *          price costs what its offer says for so many packs
 * Refuses  nothing to order; a line of another supplier; an offer on more lines than it stood on; a day in the future,
 *          or expected before it was ordered; less than what has come already
 */
export function orderOfForm(
  form: OrderForm,
  file: Pick<ShopFile, 'offers' | 'orders' | 'lots'>,
  today: Day,
): { order: Written<'orders'>; faults: Fault[] } {
  const { supplier, expectedOn, note, freight } = form;
  const was = file.orders.find(({ id }) => id === form.id) ?? null;
  const placedOn = form.placedOn ?? (was?.placedOn as Day | undefined) ?? today;
  const offers = new Map(file.offers.map((offer) => [offer.id, offer]));
  const faults = [
    ...dayFaults(placedOn, expectedOn, today),
    ...lineFaults(form, offers, was),
    ...cameFaults(form, file),
  ];
  const lines = form.lines.flatMap(({ offer: id, count, price }) => {
    const offer = offers.get(id);
    return offer ? [{ offer: id, count, price: moneyText(price ?? quoted(offer, count)) }] : [];
  });
  const id = was?.id ?? `order-${placedOn}-${form.commandId.slice(0, 8)}`;
  const asEntered = { expectedOn, note, freight: freight === null ? null : moneyText(freight) };
  return { order: { id, supplier, placedOn, lines, ...asEntered, closedOn: was?.closedOn ?? null }, faults };
}

function dayFaults(placedOn: Day, expectedOn: Day | null, today: Day): Fault[] {
  const faults: Fault[] = [];
  if (placedOn > today) {
    faults.push({ path: 'placedOn', message: 'That day is still to come. An order counts from the day it is placed.' });
  }
  if (expectedOn !== null && expectedOn < placedOn) {
    faults.push({ path: 'expectedOn', message: `It is ordered on ${placedOn}. Give that day or a later one.` });
  }
  return faults;
}

function lineFaults(
  { lines, supplier }: OrderForm,
  offers: ReadonlyMap<string, FileOffer>,
  was: FileOrder | null,
): Fault[] {
  if (lines.length === 0) return [{ path: 'lines', message: 'Nothing is ordered yet. Write packs beside an offer.' }];
  return lines.flatMap(({ row, offer }, place): Fault[] => {
    const at = `lines[${row}].count`;
    const sold = offers.get(offer);
    if (!sold) return [{ path: at, message: 'This offer is no longer there. Reload the page.' }];
    if (sold.supplier !== supplier) return [{ path: at, message: 'Another supplier sells this. Order it apart.' }];
    // A file may bring an order with two lines of one offer, and such an order can still be changed.
    const before = lines.slice(0, place).filter((one) => one.offer === offer).length;
    const stood = was?.lines.filter((one) => one.offer === offer).length ?? 0;
    const isTwice = before > 0 && before >= stood;
    return isTwice ? [{ path: at, message: 'This is on the order already. Write all packs in one line.' }] : [];
  });
}

/** What has come of an order cannot be taken off it. */
function cameFaults({ id, lines }: OrderForm, { orders, lots }: Pick<ShopFile, 'orders' | 'lots'>): Fault[] {
  const was = orders.find((order) => order.id === id);
  const offers = new Set(was?.lines.map(({ offer }) => offer));
  return [...offers].flatMap((offer): Fault[] => {
    const came = packsCame(lots, id, offer);
    const its = lines.filter((one) => one.offer === offer);
    if (came <= its.reduce((sum, { count }) => sum + count, 0)) return [];
    const message = `${came} of these have come already. Write ${came} or more.`;
    return [{ path: its[0] ? `lines[${its[0].row}].count` : 'lines', message }];
  });
}

/** What one pack costs by its offer when so many are ordered. */
function quoted({ price, breaks }: FileOffer, count: number): Micros {
  const micros = (text: string): Micros => {
    const money = readMoney(text);
    if (!money.ok) throw new RangeError(`order: ${money.message}`);
    return money.value;
  };
  return priceOfOne(
    { price: micros(price), breaks: breaks.map((one) => ({ atLeast: one.atLeast, price: micros(one.price) })) },
    count,
  );
}

/** Close an order, or expect the rest of it after all. */
export const CloseOrder = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  id: z.string().min(1).max(64),
  standing: fingerprint(),
  closed: z.enum(['yes', 'no']),
});

/** Let what was paid for packs of an order be the price of their offer from the day they came. */
export const TakePrice = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  order: z.string().min(1).max(64),
  offer: z.string().min(1).max(64),
  /** Which line of the order it came of, by its place. */
  line: z
    .string()
    .regex(/^\d{1,3}$/)
    .transform(Number),
  cameOn: z.string().max(10),
});

/** Let the offers of a supplier take as long as its orders really took. */
export const TakeLead = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  supplier: z.string().min(1).max(64),
  which: z.enum(['median', 'worst']),
});

/** An order, or one without an id, as the fields of its form. */
export const fieldsOfOrder = (order: FileOrder): Fields => ({
  ...{ placedOn: order.placedOn, expectedOn: order.expectedOn ?? '', freight: order.freight ?? '' },
  note: order.note ?? '',
  ...Object.fromEntries(
    order.lines.flatMap(({ offer, count, price }, row) => [
      [`lines[${row}].offer`, offer],
      [`lines[${row}].count`, String(count)],
      [`lines[${row}].price`, price ?? ''],
    ]),
  ),
});
