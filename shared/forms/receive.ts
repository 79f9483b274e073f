import { z } from 'zod';
import { readMoney } from '../measure/money';
import type { Fault } from '../outcome';
import type { Micros } from '../quantity/amounts';
import { typedLine } from '../text/one-line';
import { textFault } from '../text/text-fault';
import { Day, readDay } from '../time/day';
import { commandId, shopId } from './command-fields';
import { withMoneyWritten } from './money-fields';
import { type Fields, writtenRows } from './rows';

const COUNT = 'Write a whole number of bottles, from 1 to 10000.';

/** Digits alone, because "2.5" bottles is a slip and "1e3" nobody writes. */
const readCount = (text: string): number | null => {
  const count = /^\d{1,5}$/.test(text.trim()) ? Number(text) : 0;
  return count >= 1 && count <= 10_000 ? count : null;
};

const place = () => typedLine(z.string().trim().max(100, { error: SHORTER })).default('');
const SHORTER = 'Shorten this to 100 characters.';

/** What was paid for all together; empty when it is not known, which is not the same as nothing. */
const paid = z
  .string()
  .trim()
  .max(100)
  .default('')
  .transform((text, context): Micros | null => {
    if (text === '') return null;
    const money = readMoney(text);
    if (money.ok) return money.value;
    context.addIssue({ code: 'custom', message: money.message });
    return z.NEVER;
  });

const dayOrNone = z
  .union([z.literal(''), Day])
  .default('')
  .transform((text) => (text === '' ? null : text));

const OneTyped = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  product: z.string().min(1, { error: 'Choose the product.' }).max(64),
  pack: typedLine(
    z
      .string()
      .trim()
      .min(1, { error: 'Write what one bottle holds, such as "1 qt".' })
      .max(60, { error: 'Shorten this to 60 characters.' }),
  ),
  count: z.string().transform((text, context): number => {
    const count = readCount(text);
    if (count !== null) return count;
    context.addIssue({ code: 'custom', message: COUNT });
    return z.NEVER;
  }),
  paid,
  receivedOn: Day,
  expiresOn: dayOrNone,
  keptIn: place(),
});

/** One lot that came in without an order. */
export const ReceiveOne = withMoneyWritten(OneTyped, /^paid$/);

/** One line of a delivery that was counted. */
export type DeliveryLine = {
  /** Its number in the form, for saying what is wrong with it. */
  row: number;
  offer: string;
  count: number;
  paid: Micros | null;
  expiresOn: Day | null;
};

export type Delivery = {
  commandId: string;
  shop: string;
  receivedOn: Day;
  keptIn: string;
  /** The order that it came of; null when it came without one. */
  order: string | null;
  /** Whether the rest of that order will not come any more. */
  restIsOff: boolean;
  lines: DeliveryLine[];
};

const DeliveryTyped = z
  .record(z.string(), z.string({ error: 'Write this once, as text.' }).max(200, { error: 'Shorten this.' }))
  .transform((fields, context): Delivery => {
    const faults: Fault[] = Object.keys(fields)
      .filter((name) => !NAMES.test(name))
      .map((path) => ({ path, message: 'This field is not known here. Reload the page.' }));
    const rows = writtenRows(fields, 'lots', ['.count']).filter((row) => fields[`lots[${row}].count`]?.trim() !== '0');
    const lines = rows.map((row) => lineOf(fields, row, faults));
    const receivedOn = readDay(fields.receivedOn ?? '');
    if (!receivedOn.ok) faults.push({ path: 'receivedOn', message: receivedOn.message });
    const kept = (fields.keptIn ?? '').trim();
    const odd = kept.length > 100 ? SHORTER : textFault(kept);
    if (odd !== null) faults.push({ path: 'keptIn', message: odd });
    const id = commandId().safeParse(fields.commandId);
    if (!id.success) faults.push({ path: 'commandId', message: 'This form is too old. Reload the page.' });
    for (const { path, message } of faults) context.addIssue({ code: 'custom', message, path: [path] });
    if (faults.length > 0 || !receivedOn.ok || !id.success) return z.NEVER;
    const { shop = '', order = '', rest = '' } = fields;
    const ordered = { order: order || null, restIsOff: rest === 'off' };
    return { commandId: id.data, shop, receivedOn: receivedOn.value, keptIn: kept, ...ordered, lines };
  });

/**
 * A delivery: one day and place, and beside each offer how many came. An offer of which none came is left blank.
 *
 * Refuses  a field that is not of this form; a count, a price or a day that cannot be read, each at its field
 */
export const ReceiveDelivery = withMoneyWritten(DeliveryTyped, /^lots\[\d{1,3}\]\.paid$/);

const NAMES = /^(commandId|shop|receivedOn|keptIn|order|rest|lots\[\d{1,3}\]\.(offer|count|paid|expiresOn))$/;

function lineOf(fields: Fields, row: number, faults: Fault[]): DeliveryLine {
  const at = (part: string) => `lots[${row}].${part}`;
  const textOf = (part: string) => (fields[at(part)] ?? '').trim();
  const count = readCount(textOf('count'));
  if (count === null) faults.push({ path: at('count'), message: COUNT });
  const money = textOf('paid') === '' ? null : readMoney(textOf('paid'));
  if (money && !money.ok) faults.push({ path: at('paid'), message: money.message });
  const day = textOf('expiresOn') === '' ? null : readDay(textOf('expiresOn'));
  if (day && !day.ok) faults.push({ path: at('expiresOn'), message: day.message });
  return {
    ...{ row, offer: textOf('offer'), count: count ?? 1 },
    paid: money?.ok ? money.value : null,
    expiresOn: day?.ok ? day.value : null,
  };
}
