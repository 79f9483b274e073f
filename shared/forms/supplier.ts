import { z } from 'zod';
import { readMoney } from '../measure/money';
import { type Fault, type Reading, read } from '../outcome';
import type { ShopFile, Written } from '../shop-file/contract';
import { readDay, WEEKDAYS, type Weekday } from '../time/day';
import { commandId, fingerprint, shopId } from './command-fields';
import { withMoneyWritten } from './money-fields';

type FileSupplier = ShopFile['suppliers'][number];

/** Words after /shelf/suppliers/ that are pages of their own, so that no supplier can have them as its id. */
export const SUPPLIER_PAGES = ['new'] as const;

const text = () => z.string().max(300, { error: 'Shorten this.' }).trim();
const ticked = () => z.enum(['yes', '']).default('');

/** Money that may stay unknown: an empty field. */
const moneyOrNothing = () =>
  text().superRefine((typed, context) => {
    const reading = moneyOrNull(typed);
    if (!reading.ok) context.addIssue(reading.message);
  });

const moneyOrNull = (typed: string): Reading<unknown> => (typed === '' ? read(null) : readMoney(typed));

const datesIn = (typed: string): string[] =>
  typed
    .split(/[\s,;]+/)
    .filter((day) => day !== '')
    .sort();

/** Dates, each such as 2026-07-04. */
const datesTyped = () =>
  z
    .string()
    .max(5_000, { error: 'Shorten this.' })
    .default('')
    .superRefine((typed, context) => {
      for (const day of datesIn(typed)) {
        const reading = readDay(day);
        if (!reading.ok) context.addIssue(`${day}: ${reading.message}`);
      }
    });

const Typed = z
  .strictObject({
    commandId: commandId(),
    shop: shopId(),
    /** A new one has its id from its name, made before it is sent, so that sending twice is one supplier. */
    id: z.string().min(1).max(64),
    expecting: z.union([fingerprint(), z.literal('')]),
    archived: ticked(),
    /** Whether a second supplier of the same name is meant. */
    keepBoth: ticked(),
    name: text().min(1, { error: 'Write who sells.' }).max(200, { error: 'Write a shorter name.' }),
    freightPerOrder: moneyOrNothing(),
    freeFreightOver: moneyOrNothing(),
    minimumOrder: moneyOrNothing(),
    /** One date a line. */
    closedOn: datesTyped(),
    'works.mon': ticked(),
    'works.tue': ticked(),
    'works.wed': ticked(),
    'works.thu': ticked(),
    'works.fri': ticked(),
    'works.sat': ticked(),
    'works.sun': ticked(),
  })
  .superRefine((sent, context) => {
    if (WEEKDAYS.every((day) => sent[`works.${day}`] === '')) {
      context.addIssue({ code: 'custom', path: ['works.mon'], message: 'Tick at least one day on which they work.' });
    }
  });
/** The form of a supplier. Whatever is left empty is not known. */
export const SupplierForm = withMoneyWritten(Typed, /^(freightPerOrder|freeFreightOver|minimumOrder)$/);
export type SupplierForm = z.output<typeof SupplierForm>;

/** What a form of a supplier shows. */
export type SupplierFields = Omit<SupplierForm, 'commandId' | 'shop' | 'id' | 'expecting' | 'keepBoth'>;

/** A supplier as its form shows it; null gives the form of a new one, Monday to Friday. */
export function fieldsOfSupplier(supplier: FileSupplier | null): SupplierFields {
  const days: readonly Weekday[] = supplier?.workingDays ?? ['mon', 'tue', 'wed', 'thu', 'fri'];
  const tick = (day: Weekday) => (days.includes(day) ? 'yes' : '');
  return {
    archived: supplier?.archived ? 'yes' : '',
    name: supplier?.name ?? '',
    freightPerOrder: supplier?.freightPerOrder ?? '',
    freeFreightOver: supplier?.freeFreightOver ?? '',
    minimumOrder: supplier?.minimumOrder ?? '',
    closedOn: (supplier?.closedOn ?? []).join('\n'),
    'works.mon': tick('mon'),
    'works.tue': tick('tue'),
    'works.wed': tick('wed'),
    'works.thu': tick('thu'),
    'works.fri': tick('fri'),
    'works.sat': tick('sat'),
    'works.sun': tick('sun'),
  };
}

/** A supplier as the shop file writes it, from its form. */
export const supplierOfFields = (id: string, fields: SupplierFields): Written<'suppliers'> => ({
  id,
  name: fields.name,
  freightPerOrder: fields.freightPerOrder || null,
  freeFreightOver: fields.freeFreightOver || null,
  minimumOrder: fields.minimumOrder || null,
  workingDays: WEEKDAYS.filter((day) => fields[`works.${day}`] === 'yes'),
  closedOn: datesIn(fields.closedOn).filter((day, at, all) => all.indexOf(day) === at),
  archived: fields.archived === 'yes',
});

/** The other supplier of the same name, whatever its case; null when there is none. */
export function namesake<T extends { id: string; name: string }>(others: readonly T[], id: string, name: string) {
  const plain = (words: string) => words.trim().replace(/\s+/g, ' ').toLowerCase();
  return others.find((other) => other.id !== id && plain(other.name) === plain(name)) ?? null;
}

/** Put a supplier or an offer away, or take it out again. */
export const PutAwayGoods = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  what: z.enum(['supplier', 'offer']),
  id: z.string().min(1).max(64),
  expecting: fingerprint(),
  archived: z.enum(['yes', 'no']),
});

/** Remove a supplier or an offer that was entered by mistake and never used. */
export const RemoveGoods = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  what: z.enum(['supplier', 'offer']),
  id: z.string().min(1).max(64),
});

/**
 * Faults of one thing of a shop file, each beside the field of the form that it came from.
 *
 * Takes   faults with their paths in the part, and the place of the thing in it, such as "suppliers[0]". The sentences are
 *         made for a file in an editor; in a form nobody writes quotes
 */
export const faultsBeside = (faults: readonly Fault[], place: string): Fault[] =>
  faults.map(({ path, message }) => ({
    path: path.startsWith(`${place}.`) ? path.slice(place.length + 1) : path,
    message: message.replaceAll(' in quotes', '').replaceAll(', or null for once', ''),
  }));
