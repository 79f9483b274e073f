import { type Stock, stock } from '@/shared/quantity/amounts';
import { exact } from '@/shared/quantity/exact';
import { wholeNearest } from '@/shared/quantity/rounding';
import { dayFromNumber } from '@/shared/time/day';
import type { Part } from '../buying/baseline-policy';
import { comingFor, type UsedPack } from '../buying/bought';
import { placeAfter } from '../buying/need';
import type { Order, OrderLine } from '../buying/orders';
import { daysBehind, openPack, type PackUse } from '../buying/pack-use';
import type { PurchasePlan } from '../buying/purchase-plan';
import { type ExplainedLine, type Reason, whyOf } from '../buying/why';
import { whyInWords } from '../buying/why-in-words';
import type { Offer } from '../shop';
import { arrivalStep } from './buying-late-figures';
import { buyingAddress, packsOfLine, packWords, type Way, wayAddress } from './buying-way';
import { pricedBy, priceOfUnit } from './offer-figures';
import { count, entered, type FoundWorking, figureAddress, money, type Shown, type Step, worked } from './shown';

const explained = new WeakMap<PurchasePlan, ExplainedLine[]>();

/** Every line of a plan with why it is so, told once for a plan. */
export function explainedIn(plan: PurchasePlan): ExplainedLine[] {
  const known = explained.get(plan) ?? whyOf(plan);
  explained.set(plan, known);
  return known;
}

/** The figure that a reason stands on; null for one that has none. */
export function reasonShown(reason: Reason, { supplier }: Pick<Order, 'supplier'>): Shown | null {
  switch (reason.kind) {
    case 'nothing else is offered':
    case 'other costs more in all':
      return null;
    case 'other dies':
    case 'other is too much':
      return { kind: 'ratio', value: reason.part * 100, unit: '%' };
    case 'other is dearer':
      return { kind: 'ratio', value: reason.times, unit: 'times' };
    case 'other is too late':
      return { kind: 'day', day: reason.on };
    case 'price by quantity':
      return count(reason.atLeast, 'packs');
    case 'shares an order':
      return { kind: 'day', day: reason.latestOn };
    case 'freight becomes free':
      return money(supplier.freeFreightOver, 'Never entered.');
    case 'minimum is reached':
      return money(supplier.minimumOrder, 'Never entered.');
    case 'is late':
      return { kind: 'day', day: reason.neededOn };
    case 'stays shut':
      return count(reason.count, 'packs');
  }
}

/** What the reasons of one line of an order are told from. */
type Told = { way: Way; order: Order; line: OrderLine; part: Part; packs: UsedPack[]; first: UsedPack };

/** The working of a reason of one line of a plan's order, by its place among them. A habit gives no reasons. */
export function whyWorking(way: Way, order: Order, line: OrderLine, number: string): FoundWorking | null {
  const { plan, parts } = way;
  const found = explainedIn(plan).find((one) => one.order === order && one.line === line);
  const reason = found && /^\d{1,3}$/.test(number) ? found.reasons[Number(number)] : undefined;
  const value = reason && reasonShown(reason, order);
  const part = parts.find((one) => one.part.need.product === line.offer.product)?.part;
  const packs = packsOfLine(way, order, line);
  const [first] = packs;
  if (!found || !reason || !value || !part || !first) return null;
  return {
    title: `Why ${line.count} × ${line.offer.packText} of ${line.offer.product.name}`,
    value,
    rule: whyInWords(found, reason, plan.today, plan.shop.currency),
    steps: stepsOf(reason, { way, order, line, part, packs, first }),
  };
}

function stepsOf(reason: Reason, told: Told): Step[] {
  const { way, line, packs } = told;
  switch (reason.kind) {
    case 'other dies':
    case 'other is too much':
      return [...unitSteps(told, reason.other), ...leftSteps(told, reason.other)];
    case 'other is dearer':
      return unitSteps(told, reason.other);
    case 'other is too late':
      return [neededStep(told), ...timeSteps(told, reason.other)];
    case 'price by quantity':
      return [
        entered('One pack', moneyOf(line.offer.price), 'when one is ordered'),
        ...line.offer.breaks.map(breakStep),
      ];
    case 'shares an order':
      return [neededStep(told), leadStep(line.offer), safetyStep(told)];
    case 'freight becomes free':
    case 'minimum is reached':
      return goodsSteps(told);
    case 'is late':
      return [lateStep(told), ...timeSteps(told, line.offer)];
    case 'stays shut':
      return packs
        .filter(({ openedOn }) => openedOn === null)
        .map((pack) => entered(line.offer.packText, moneyOf(pack.price), packWords(pack, way.plan)));
    default:
      return [];
  }
}

const moneyOf = (micros: number): Shown => ({ kind: 'money', micros });

/** What a litre or a pound costs in this pack, and in the other one. */
function unitSteps({ way: { plan }, line }: Told, other: Offer): Step[] {
  const by = pricedBy(line.offer.product, plan.shop.units);
  return [line.offer, other].map((offer) =>
    worked(
      `A ${by.name} bought by the ${offer.packText}`,
      money(priceOfUnit(offer.price, offer, by), 'Too large to be told.'),
      offer.supplier.name,
      figureAddress('offer', offer.id, 'unitPrice'),
    ),
  );
}

/** What would become of the other pack, opened when the first of these is. */
function leftSteps(told: Told, other: Offer): Step[] {
  const { way, part, first } = told;
  const { need } = part;
  const { horizon } = way.plan;
  const use = otherOpened(told, other);
  if (!use) return [];
  const holds = (amount: number): Shown => ({ kind: 'stock', amount: stock(amount), form: other.product.form });
  const later = Math.min(use.left, (need.whole * daysBehind(horizon, use.lastDay)) / horizon.days);
  const usedLater = use.lastDay < horizon.end ? 0 : wholeNearest<Stock>(exact(later));
  return [
    entered('The other pack holds', holds(use.to - first.from + use.left), other.packText),
    entered(
      'It would be opened',
      { kind: 'day', day: dayFromNumber(need.days[placeOf(told)] ?? 0) },
      'when this one is',
    ),
    entered('Last day it could be used', lastDayOf(use), lifeWords(other)),
    entered('Used of it within these weeks', holds(use.to - first.from), 'what the shelf does not give'),
    ...(usedLater > 0 ? [entered('Used of it after them', holds(usedLater), 'at the pace of these weeks')] : []),
    entered('Left to die', holds(use.left - usedLater), 'as a part of what it holds: the figure above'),
  ];
}

const placeOf = ({ part, first }: Told): number => placeAfter(part.need, first.from, 0);

function otherOpened(told: Told, other: Offer): PackUse | null {
  const { way, part, first } = told;
  const { horizon } = way.plan;
  const place = placeOf(told);
  const pack = part.packs.find(({ offer }) => offer === other);
  const coming = pack?.ways[place] && comingFor(part.need, horizon, { pack, orderOn: pack.ways[place].orderOn }, place);
  if (!pack || !coming || typeof coming === 'string') return null;
  return openPack(part.need, horizon, pack, { ...coming, covered: first.from, place });
}

const lastDayOf = ({ lastDay }: PackUse): Shown =>
  Number.isFinite(lastDay)
    ? { kind: 'day', day: dayFromNumber(lastDay) }
    : { kind: 'unknown', because: 'How long it keeps was never entered; it counts as 365 days after these weeks.' };

const lifeWords = ({ product: { shelfLife } }: Offer): string =>
  [
    shelfLife.openedDays === null ? '' : `${shelfLife.openedDays} days once opened`,
    shelfLife.unopenedDays === null ? '' : `${shelfLife.unopenedDays} days from its arrival`,
  ]
    .filter(Boolean)
    .join(', ') || 'no life entered';

function neededStep(told: Told): Step {
  const day = told.part.need.days[placeOf(told)];
  return entered(
    'Needed',
    day === undefined ? { kind: 'text', text: 'after these weeks' } : { kind: 'day', day: dayFromNumber(day) },
    'the first day that the shelf does not give enough for',
  );
}

const safetyStep = ({ way }: Told): Step =>
  entered('Safety days', count(way.plan.shop.safetyDays, 'days'), 'Setup, the shop');

const timeSteps = (told: Told, offer: Offer): Step[] => [arrivalStep(told.way.plan, offer), safetyStep(told)];

const leadStep = ({ packText, supplier, leadDays }: Offer): Step =>
  entered(
    'Delivery time',
    leadDays === null
      ? { kind: 'unknown', because: 'Never entered; it counts as none.' }
      : count(leadDays, 'working days'),
    `${packText} of ${supplier.name}`,
  );

const breakStep = ({ atLeast, price }: Offer['breaks'][number]): Step =>
  entered(`From ${atLeast} packs on`, moneyOf(price), 'each');

/** What the order comes to with this line, and how much of that it is. */
function goodsSteps({ way, order, line }: Told): Step[] {
  const number = way.orders.indexOf(order);
  const at = order.lines.indexOf(line);
  return [
    worked('Goods of the order', moneyOf(order.goods), 'with it', wayAddress(way, 'order', number, 'goods')),
    worked('Of them this line', moneyOf(line.cost), 'the line', wayAddress(way, 'order', number, 'line', at)),
  ];
}

function lateStep(told: Told): Step {
  const { plan } = told.way;
  const on = told.part.need.days[placeOf(told)];
  const late = plan.late.find(
    ({ product, on: day }) => product === told.line.offer.product && on !== undefined && day === dayFromNumber(on),
  );
  if (!late) return neededStep(told);
  const amount: Shown = { kind: 'stock', amount: late.amount, form: late.product.form };
  return worked(
    'Not there in time',
    amount,
    'what is short on that day',
    buyingAddress(plan, 'late', late.product.id, late.on),
  );
}
