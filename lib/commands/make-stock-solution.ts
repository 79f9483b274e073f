import 'server-only';
import type { Clock } from '@/lib/clock';
import type { Rows } from '@/lib/data/database';
import { drawFrom } from '@/lib/data/draw-from';
import { findContainer } from '@/lib/data/find-container';
import { fingerprint } from '@/lib/data/fingerprint';
import { lotReceived } from '@/lib/data/lot-in';
import { receiveLots } from '@/lib/data/save-lots';
import { savePart } from '@/lib/data/save-part';
import { productOfLot } from '@/lib/data/shop-facts';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { type Stamp, write } from '@/lib/data/writer';
import { stockSolutionOf } from '@/lib/engine/mix/stock-solution-of';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { SHELF_PAGES } from '@/shared/forms/product';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { type Micros, plus, type Stock, sum } from '@/shared/quantity/amounts';
import { type Exact, exact, fraction, multiply } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import type { ShopFile } from '@/shared/shop-file/contract';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import { idFromName } from '@/shared/shop-file/id-from-name';
import { addDays } from '@/shared/time/day';
import { dayOf, Zone } from '@/shared/time/zone';

export type MakeStockSolution = {
  commandId: string;
  shopId: string;
  actor?: string;
  /** What is made up with water. */
  product: string;
  /** Which bottles it comes from, and how much of each: µL of a liquid, mg of a powder. */
  from: { lotId: string; place: number; amount: Stock }[];
  /** What the solution measures in the end: as it was typed, and in mL. */
  makeUpTo: { text: string; ml: Exact };
  /** For how many days it may be used; null when nobody knows. */
  useByDays: number | null;
  keptIn: string | null;
};

export type StockSolutionMade = { product: string; lot: string; isNew: boolean };

/**
 * Make a stock solution: draw a product from its bottles, and put on the shelf what it was made into, at what was drawn.
 * A solution that was made before at the same strength is the same product, in another bottle.
 *
 * Gives    the product and the lot that came of it
 * Refuses  'not-found'; 'not-enough-stock'; 'before-received'; 'faults' for a bottle of something else, nothing drawn,
 *          less made than went in, and what `stockSolutionOf` refuses. Then nothing is drawn and nothing made.
 */
export async function makeStockSolution(input: MakeStockSolution, clock: Clock): Promise<Outcome<StockSolutionMade>> {
  const { commandId, shopId, actor, ...asked } = input;
  const body = { ...asked, makeUpTo: asked.makeUpTo.text };
  return write({ id: commandId, name: 'makeStockSolution', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const faults = heldTo(
      ['useByDays', PIECES.useByDays, input.useByDays],
      ['keptIn', PIECES.lot.keptIn, input.keptIn],
      ...input.from.map(({ amount }, at) => [`from[${at}]`, PIECES.taken, amount] as const),
    );
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const file = await shopInWrite(rows, shopId);
    const source = file?.products.find(({ id }) => id === input.product);
    if (!file || !source) return refuse({ code: 'not-found', what: 'product', id: input.product });
    const share = shareIn(input, source.form);
    if (!share) return refuse({ code: 'faults', faults: [{ path: 'makeUpTo', message: TOO_LITTLE }] });
    const made = stockSolutionOf(shopOfFile(file), source, share);
    if (!made.ok) return refuse({ code: 'faults', faults: [{ path: 'makeUpTo', message: made.message }] });

    const zone = Zone.parse(file.shop.timeZone);
    const paid = await drawAll(rows, stamp, zone, input, `made into ${made.value.name}`);
    if (!paid.ok) return paid;
    const product = await productFor(rows, stamp, file, made.value);
    if (!product.ok) return product;
    const today = dayOf(zone, stamp.recordedAt);
    const expiresOn = input.useByDays === null ? null : addDays(today, input.useByDays);
    const bottle = { product: product.value.id, pack: input.makeUpTo.text, count: 1, paid: paid.value };
    const lot = await lotReceived(rows, shopId, { ...bottle, expiresOn, keptIn: input.keptIn }, today);
    if (!lot.ok) return lot;
    await receiveLots(rows, stamp, zone, [lot.value]);
    return accept({ product: product.value.id, lot: lot.value.id, isNew: product.value.isNew });
  });
}

const TOO_LITTLE =
  'A solution measures more than what goes into it. Write how much it is once water was filled up, such as "500 mL".';

const MICROLITRES_PER_ML = exact(1000n);

/** How much of the product is in each mL of the solution, µL or mg; null when that cannot be. */
function shareIn({ from, makeUpTo }: MakeStockSolution, form: 'liquid' | 'powder'): Exact | null {
  const whole = wholeNearest<number>(multiply(makeUpTo.ml, MICROLITRES_PER_ML));
  const inIt = sum(from.map(({ amount }) => amount));
  // A kilogram of powder never dissolves in less than a litre of what it makes.
  if (whole === 0 || inIt === 0 || (form === 'liquid' ? inIt >= whole : inIt > whole)) return null;
  return fraction(BigInt(inIt) * 1000n, BigInt(whole));
}

/** Draw from each bottle in turn. Gives what all of it had cost; null when that is not known of any. */
async function drawAll(
  rows: Rows,
  stamp: Stamp,
  zone: Zone,
  { product, from }: MakeStockSolution,
  reason: string,
): Promise<Outcome<Micros | null>> {
  let paid: Micros | null = 0 as Micros;
  for (const { lotId, place, amount } of from) {
    if ((await productOfLot(rows, stamp.shopId, lotId)) !== product) {
      return refuse({ code: 'not-found', what: `bottle of ${product}`, id: `${lotId}, number ${place + 1}` });
    }
    const container = await findContainer(rows, stamp.shopId, { lotId, place });
    if (!container.ok) return container;
    const drawn = await drawFrom(rows, stamp, zone, container.value, { amount, at: stamp.recordedAt, reason });
    if (!drawn.ok) return drawn;
    paid = paid === null || drawn.value.cost === null ? null : plus(paid, drawn.value.cost);
  }
  return accept(paid);
}

/**
 * The product that a solution is: the one that was made before, or a new one. One that does not say yet what it is made
 * from says it from now on.
 */
async function productFor(
  rows: Rows,
  stamp: Stamp,
  file: ShopFile,
  made: Omit<ShopFile['products'][number], 'id'>,
): Promise<Outcome<{ id: string; isNew: boolean }>> {
  const strength = ({ name, form, contents }: typeof made) => fingerprint({ name, form, contents });
  const isOf = ({ madeFrom }: typeof made) => fingerprint(madeFrom) === fingerprint(made.madeFrom);
  const before = file.products
    .filter((one) => !one.archived && strength(one) === strength(made))
    .find((one) => one.madeFrom.length === 0 || isOf(one));
  if (before && isOf(before)) return accept({ id: before.id, isNew: false });
  const taken = file.products.map(({ id }) => id);
  const product = before
    ? { ...before, madeFrom: made.madeFrom }
    : { ...made, id: idFromName(made.name, taken, SHELF_PAGES) };
  const saved = await savePart(rows, stamp, file, { products: [product] });
  return saved.ok ? accept({ id: product.id, isNew: !before }) : saved;
}
