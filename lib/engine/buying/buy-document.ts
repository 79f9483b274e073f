import { moneyText } from '@/shared/measure/money';
import { micros, type Stock } from '@/shared/quantity/amounts';
import { dayFromNumber } from '@/shared/time/day';
import { type Assumed, assumedIn } from './assumed';
import type { Order } from './orders';
import type { PurchasePlan } from './purchase-plan';

export type BuyDocument = ReturnType<typeof buyDocument>;

/**
 * A purchase plan as the `shop` command and the HTTP API print it.
 *
 * Units   mL of a liquid and g of a powder as plain numbers; money as decimal text with six places
 * Takes   the plan, and settings that the shop file left out, as `leftOutIn` finds them
 * Gives   null for a freight that was never entered; it counts nothing in the sums, and `assumed` says so. `unknown` names
 *         the products of which an amount is unknown: of them only what is known is planned, and nothing is proven
 */
export const buyDocument = (
  { orders, late, cost, habits, proven, gap, unknown, assumed }: PurchasePlan,
  leftOut: readonly Pick<Assumed, 'path' | 'taken'>[] = [],
) => ({
  orders: orders.map(orderIn),
  late: late.map(({ product, on, amount }) => ({ product: product.id, on, amount: shown(amount) })),
  cost: {
    packs: moneyText(cost.packs),
    freight: moneyText(cost.freight),
    capital: moneyText(cost.capital),
    left: moneyText(cost.left),
    total: signedMoneyText(cost.total),
    ofWhichWaste: moneyText(cost.ofWhichWaste),
  },
  habits: {
    smallestPack: signedMoneyText(habits.smallestPack),
    cheapestPerMl: signedMoneyText(habits.cheapestPerMl),
  },
  proven,
  gap: proven ? 0 : gap,
  unknown: unknown.map(({ id }) => id),
  assumed: assumedIn([...leftOut, ...assumed]),
});

const orderIn = ({ supplier, on, lines, freight }: Order) => ({
  supplier: supplier.id,
  on: dayFromNumber(on),
  lines: lines.map(({ offer, count, cost }) => ({
    offer: offer.id,
    product: offer.product.id,
    count,
    cost: moneyText(cost),
  })),
  freight: freight === null ? null : moneyText(freight),
});

/** What the shelf counts in: a thousand of them make a mL or a g. */
const shown = (amount: Stock): number => amount / 1_000;

/** A total may be below nothing: what is left may be worth more than what was bought for the need. */
export const signedMoneyText = (amount: number): string =>
  amount < 0 ? `-${moneyText(micros(-amount))}` : moneyText(micros(amount));
