import { showNumber, showStock } from '@/shared/measure/show';
import { type Micros, stock } from '@/shared/quantity/amounts';
import { dayFromNumber } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import type { Part } from '../buying/baseline-policy';
import type { Purchase, UsedPack } from '../buying/bought';
import { placeAfter } from '../buying/need';
import { tiedUp } from '../buying/pack-use';
import { packWords, type Way, wayAddress } from './buying-way';
import { entered, type FoundWorking, type Shown, type Step, worked } from './shown';

/** What is told of packs one by one: the money tied up in them, what is left in them, and what dies in them. */
export type OfPacks = 'capital' | 'left' | 'ofWhichWaste';

type Told = { title: string; rule: string; of: (purchase: Purchase) => Micros; ofPack: (pack: UsedPack) => Micros };

export const OF_PACKS: Record<OfPacks, Told> = {
  capital: {
    title: 'Money tied up',
    rule: 'The price of each part of a pack × the days from its order until it is used, dies, or the weeks end ÷ 365 × the cost of capital in a year.',
    of: ({ capital }) => capital,
    ofPack: ({ capital }) => capital,
  },
  left: {
    title: 'Left, and still to be used',
    rule: 'What is left in packs when the weeks end and will be used before it dies, at the pace of these weeks: the part of the price that it carries. A life that nobody knows counts 365 days on.',
    of: ({ left }) => left,
    ofPack: ({ credit }) => credit,
  },
  ofWhichWaste: {
    title: 'Of the packs, what will die',
    rule: 'What is left in packs after their last usable day within these weeks, as a part of their price. It is inside the packs and adds nothing to the total.',
    of: ({ waste }) => waste,
    ofPack: ({ waste }) => waste,
  },
};

const money = (amount: number): Shown => ({ kind: 'money', micros: amount });

const rateStep = ({ plan }: Way): Step =>
  entered(
    'Cost of capital in a year',
    { kind: 'ratio', value: plan.shop.capitalPerYear * 100, unit: '%' },
    'Setup, the shop',
  );

/** The working of one of these for all products together. */
export function ofProductsWorking(way: Way, figure: OfPacks): FoundWorking {
  const { title, rule, of } = OF_PACKS[figure];
  return {
    title: `${title}, ${way.plan.weeks} weeks${way.named}`,
    value: money(way.cost[figure]),
    rule,
    steps: [
      ...(figure === 'capital' ? [rateStep(way)] : []),
      ...way.parts.map(({ part: { need }, purchase }) =>
        worked(need.product.name, money(of(purchase)), 'its packs', wayAddress(way, 'part', need.product.id, figure)),
      ),
    ],
  };
}

const isOfPacks = (figure: string | undefined): figure is OfPacks => figure !== undefined && figure in OF_PACKS;

/** The working of one of these for one product, pack by pack: `PRODUCT/capital`, `PRODUCT/left` or `PRODUCT/ofWhichWaste`. */
export function ofProductWorking(way: Way, [id, figure]: string[]): FoundWorking | null {
  const found = way.parts.find(({ part }) => part.need.product.id === id);
  if (!found || !isOfPacks(figure)) return null;
  const { part, purchase } = found;
  const { title, rule, of, ofPack } = OF_PACKS[figure];
  return {
    title: `${title}: ${part.need.product.name}${way.named}`,
    value: money(of(purchase)),
    rule,
    steps: [
      ...(figure === 'capital' ? [rateStep(way)] : []),
      ...(figure === 'left' ? paceSteps(way, part) : []),
      ...purchase.packs.map((pack) =>
        entered(
          `${pack.pack.offer.packText} ordered ${showDay(dayFromNumber(pack.orderOn), way.plan.today)}`,
          money(ofPack(pack)),
          packDetail(way, part, pack, figure),
        ),
      ),
    ],
  };
}

const paceSteps = ({ plan }: Way, { need }: Part): Step[] => [
  entered(
    `Needed in ${plan.horizon.days} days`,
    { kind: 'stock', amount: need.whole, form: need.product.form },
    'the pace at which what is left goes on being used',
  ),
];

function packDetail(way: Way, part: Part, pack: UsedPack, figure: OfPacks): string {
  if (figure === 'capital') return `${daysTied(way, part, pack)} days on average; ${packWords(pack, way.plan)}`;
  const { form } = part.need.product;
  const left = showStock(stock(pack.use.left), form, way.plan.shop.units);
  return `${left} of ${showStock(pack.pack.size, form, way.plan.shop.units)} left; ${packWords(pack, way.plan)}`;
}

/** How many days a µL of a pack is tied up on average. */
function daysTied({ plan }: Way, { need }: Part, pack: UsedPack): string {
  const { use, orderOn, from, openedOn } = pack;
  const place = openedOn === null ? need.days.length : placeAfter(need, from, 0);
  return showNumber(tiedUp(need, plan.horizon, pack.pack.size, { ...use, orderOn, from, place }) / pack.pack.size);
}
