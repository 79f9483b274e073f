import { z } from 'zod';
import { readMoney } from '../measure/money';
import { exactStockOf, readSize } from '../measure/size';
import { type Fault, type Reading, read, unreadable } from '../outcome';
import { compare } from '../quantity/exact';
import type { ShopFile, Written } from '../shop-file/contract';
import { type Day, readDay } from '../time/day';
import { commandId, fingerprint, shopId } from './command-fields';
import { withMoneyWritten } from './money-fields';
import { type Fields, rowOf, rowsIn, writtenRows } from './rows';

type FileOffer = ShopFile['offers'][number];
type FileProduct = ShopFile['products'][number];

/** Words after /shelf/PRODUCT/offer/ that are pages of their own, so that no offer can have them as its id. */
export const OFFER_PAGES = ['new'] as const;

const LONGEST = 300;
const TOO_OLD = 'This form is too old. Copy what you typed, reload the page and enter it again.';

/** A price as an offer had it when the form was opened. */
const WasPrice = z.object({
  since: z.string().nullable(),
  price: z.string(),
  breaks: z.array(z.object({ atLeast: z.number(), price: z.string() })),
});
type WasPrice = z.output<typeof WasPrice>;

const text = () => z.string().max(LONGEST, { error: 'Shorten this.' }).trim();

const Single = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  /** A new one has its id from supplier, product and pack, made before it is sent, so that sending twice is one offer. */
  id: z.string().min(1).max(64),
  expecting: z.union([fingerprint(), z.literal('')]),
  product: z.string().min(1).max(64),
  archived: z.enum(['yes', '']).default(''),
  /** Whether a second offer of the same pack from the same supplier is meant. */
  keepBoth: z.enum(['yes', '']).default(''),
  /** The price before this form, as JSON; empty for a new offer. */
  was: z.string().max(50_000).default('').transform(readWas),
  supplier: z.string().min(1, { error: 'Choose who sells it.' }).max(64),
  pack: text().min(1, { error: 'Write what one pack holds, such as 1 qt or 2.5 lb.' }),
  price: text().superRefine(says(readMoney)),
  leadDays: text().superRefine(says(readDays)),
  since: text().superRefine(says((typed) => (typed === '' ? read(null) : readDay(typed)))),
});

const Typed = z
  .record(z.string(), z.string({ error: TOO_OLD }).max(50_000), { error: TOO_OLD })
  .transform((sent, context) => {
    const lines = Object.keys(sent).filter((name) => rowOf(name, 'breaks') !== null);
    const single = Single.safeParse(Object.fromEntries(Object.entries(sent).filter(([name]) => !lines.includes(name))));
    for (const { path, message } of single.error?.issues ?? [])
      context.addIssue({ code: 'custom', path: [...path], message });
    const breaks = breaksIn(sent);
    for (const { path, message } of breaks.faults) context.addIssue({ code: 'custom', path: [path], message });
    if (!single.success || breaks.faults.length > 0) return z.NEVER;
    return { ...single.data, breaks: breaks.lines };
  });
/** The form of an offer: its own fields, and any number of quantity breaks named "breaks[0].atLeast", "breaks[0].price". */
export const OfferForm = withMoneyWritten(Typed, /^(price|breaks\[\d{1,3}\]\.price)$/);
export type OfferForm = z.output<typeof OfferForm>;

function says(reader: (text: string) => Reading<unknown>) {
  return (typed: string, context: z.core.$RefinementCtx<string>) => {
    const reading = reader(typed);
    if (!reading.ok) context.addIssue(reading.message);
  };
}

function readWas(json: string): WasPrice | null {
  try {
    return json === '' ? null : WasPrice.parse(JSON.parse(json));
  } catch {
    return null;
  }
}

/** Whole days, or nothing: not known. */
function readDays(typed: string): Reading<number | null> {
  if (typed === '') return read(null);
  if (/^\d{1,3}$/.test(typed)) return read(Number(typed));
  return unreadable(
    `${JSON.stringify(typed)} is not a number of days. Write whole days, such as 5, or leave it empty.`,
  );
}

type Break = { atLeast: number; price: string };

/** The quantity breaks of a form, in the order they stand there. A line in which nothing was written means nothing. */
function breaksIn(sent: Fields): { lines: Break[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const lines = writtenRows(sent, 'breaks', ['.atLeast', '.price']).map((row) => {
    const [atLeast, price] = [
      (sent[`breaks[${row}].atLeast`] ?? '').trim(),
      (sent[`breaks[${row}].price`] ?? '').trim(),
    ];
    if (!/^\d{1,7}$/.test(atLeast) || Number(atLeast) < 2) {
      faults.push({ path: `breaks[${row}].atLeast`, message: 'Write from how many packs on, 2 or more.' });
    }
    const reading = readMoney(price);
    if (!reading.ok) faults.push({ path: `breaks[${row}].price`, message: reading.message });
    return { atLeast: Number(atLeast), price, row };
  });
  for (const [place, { atLeast, row }] of lines.entries()) {
    if (lines.findIndex((line) => line.atLeast === atLeast) === place) continue;
    faults.push({
      path: `breaks[${row}].atLeast`,
      message: `There is already a price from ${atLeast} packs on. Keep one.`,
    });
  }
  return { lines: lines.map(({ atLeast, price }) => ({ atLeast, price })), faults };
}

/** What a form of an offer shows. */
export type OfferFields = Record<
  'supplier' | 'product' | 'pack' | 'price' | 'leadDays' | 'since' | 'archived' | 'was',
  string
> & {
  breaks: { atLeast: string; price: string }[];
};

/** An offer as its form shows it. The day of its price is empty: a price that stays has its day, a new one gets today. */
export const fieldsOfOffer = (offer: FileOffer | null, product: string): OfferFields => ({
  supplier: offer?.supplier ?? '',
  product,
  pack: offer?.pack ?? '',
  price: offer?.price ?? '',
  breaks: offer?.breaks.map(({ atLeast, price }) => ({ atLeast: String(atLeast), price })) ?? [],
  leadDays: offer?.leadDays === null || offer?.leadDays === undefined ? '' : String(offer.leadDays),
  since: '',
  archived: offer?.archived ? 'yes' : '',
  was: offer ? JSON.stringify({ since: offer.since, price: offer.price, breaks: offer.breaks }) : '',
});

/** The quantity breaks that were typed into a form that came back, however many lines it has. */
export const typedBreaks = (typed: Fields): { atLeast: string; price: string }[] =>
  rowsIn(Object.keys(typed), 'breaks').map((row) => ({
    atLeast: typed[`breaks[${row}].atLeast`] ?? '',
    price: typed[`breaks[${row}].price`] ?? '',
  }));

/**
 * An offer as the shop file writes it, from its form. What it cost before stays with the shop and is not said here.
 *
 * Takes    the form, and today: a price that differs holds from the day that was given, or else from today
 * Refuses  a day that is still to come; a day before the price that stands there; a new day for a price that did not change
 */
export function offerOfForm(form: OfferForm, today: Day): { offer: Written<'offers'>; faults: Fault[] } {
  const { id, supplier, product, pack, price, breaks, archived } = form;
  const leadDays = readDays(form.leadDays);
  const since = sinceOf(form, today);
  return {
    offer: {
      ...{ id, supplier, product, pack, price, breaks, archived: archived === 'yes' },
      leadDays: leadDays.ok ? leadDays.value : null,
      since: since.ok ? since.value : null,
    },
    faults: since.ok ? [] : [{ path: 'since', message: since.message }],
  };
}

function sinceOf({ was, since, ...now }: OfferForm, today: Day): Reading<string | null> {
  if (since > today)
    return unreadable(`${since} is still to come. Enter the new price on the day from which it holds.`);
  if (was === null) return read(since || today);
  if (isSamePrice(was, now)) {
    if (since === '' || since === was.since) return read(was.since);
    if (was.since === null) return read(since);
    return unreadable(`The price is the same, and holds from ${was.since}. Leave this empty, or write the new price.`);
  }
  if (was.since !== null && (since || today) < was.since) {
    return unreadable(`The price before holds from ${was.since}. Give that day or a later one.`);
  }
  return read(since || today);
}

/** Whether two prices of an offer come to the same, however they are written. */
function isSamePrice(a: Omit<WasPrice, 'since'>, b: Omit<WasPrice, 'since'>): boolean {
  if (worth(a.price) !== worth(b.price) || a.breaks.length !== b.breaks.length) return false;
  return a.breaks.every(({ atLeast, price }, place) => {
    const other = b.breaks[place];
    return other !== undefined && other.atLeast === atLeast && worth(other.price) === worth(price);
  });
}

const worth = (money: string): number | null => {
  const reading = readMoney(money);
  return reading.ok ? reading.value : null;
};

/** Another offer of the same supplier for the same product whose pack holds the same; null when there is none. */
export function twinOf(file: Pick<ShopFile, 'offers' | 'products'>, offer: Written<'offers'>): FileOffer | null {
  const product = file.products.find(({ id }) => id === offer.product);
  if (!product) return null;
  const others = file.offers.filter(({ id, supplier, product }) => {
    return id !== offer.id && supplier === offer.supplier && product === offer.product;
  });
  return others.find(({ pack }) => holdTheSame(pack, offer.pack, product)) ?? null;
}

function holdTheSame(a: string, b: string, product: FileProduct): boolean {
  const [one, other] = [a, b].map((pack) => {
    const size = readSize(pack, product.form);
    return size.ok ? exactStockOf(size.value, product) : null;
  });
  return one != null && other != null && compare(one, other) === 0;
}
