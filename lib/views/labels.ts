import 'server-only';
import { z } from 'zod';
import { bottleCode } from '@/shared/codes/bottle-code';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { lastUsableDay } from '../engine/ledger/last-usable-day';
import type { Container, Shop } from '../engine/shop';
import { spotsNamed } from './bottle-address';
import { houseNow } from './house';
import { type SquareCode, squareCode } from './square-code';

const LABELS_ON_A_SHEET = 24;

const list = z.union([z.string().transform((text) => [text]), z.array(z.string())]).catch([]);

/** What the label sheet may be asked for. Anything else in the address is left out of account. */
const LabelsQuery = z.object({
  sheet: z.enum(['letter', 'a4']).optional().catch(undefined),
  /** How many labels of the first sheet were used before. */
  skip: z.coerce
    .number()
    .int()
    .min(0)
    .max(LABELS_ON_A_SHEET - 1)
    .catch(0),
  lots: z.string().catch(''),
  bottle: list,
  /** Present once bottles were chosen one by one, even when none was. */
  chosen: z.string().catch(''),
});

/** One label, as it is printed. Days are printed with their year, since a label outlives it. */
export type Label = {
  /** Names its bottle for ever: the lot in the books, and the number in it. */
  key: string;
  code: string;
  square: SquareCode;
  product: string;
  lot: string;
  number: number;
  pack: string;
  lastDay: Day | null;
  receivedOn: Day;
  openedOn: Day | null;
  /** How many days it keeps once it is opened; null when nobody knows. */
  openedDays: number | null;
  signalWord: string | null;
};

export type LabelsScreen = {
  sheet: 'letter' | 'a4';
  skip: number;
  /** How many labels a sheet has. */
  onASheet: number;
  /** Every bottle with something in it, by product. */
  choices: { label: Label; chosen: boolean }[];
  /** Sheet after sheet of the chosen ones; null is a label that was used before. */
  sheets: (Label | null)[][];
};

/** Labels for the bottles on the shelf, laid out on sheets. Null when there is no shop. */
export async function labelsScreen(clock: Clock, asked: unknown): Promise<LabelsScreen | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const query = LabelsQuery.parse(asked);
  const labels = await labelsOf(house.id, house.shop);
  const choices = labels.map((label) => ({ label, chosen: isChosen(label, query) }));
  return {
    sheet: query.sheet ?? (house.shop.units === 'us' ? 'letter' : 'a4'),
    skip: query.skip,
    onASheet: LABELS_ON_A_SHEET,
    choices,
    sheets: onSheets(
      choices.flatMap(({ label, chosen }) => (chosen ? [label] : [])),
      query.skip,
    ),
  };
}

function isChosen({ key, lot }: Label, { bottle, lots, chosen }: z.output<typeof LabelsQuery>): boolean {
  if (bottle.length > 0 || chosen !== '') return bottle.includes(key);
  if (lots === '') return true;
  const asked = lots.split(',').map((each) => each.trim());
  return asked.includes(lot) || asked.includes(key.slice(0, key.lastIndexOf('/')));
}

async function labelsOf(shopId: string, { containers }: Shop): Promise<Label[]> {
  const spotNamed = await spotsNamed(shopId);
  return containers
    .filter(({ remaining }) => remaining > 0)
    .flatMap((container) => {
      const spot = spotNamed(container.lot, container.place);
      // A bottle that got another name since the shop was read has its label the next time one looks.
      return spot ? [labelOf(container, spot.lotId, spot.place + 1)] : [];
    })
    .sort((a, b) => a.product.localeCompare(b.product) || a.receivedOn.localeCompare(b.receivedOn));
}

function labelOf(container: Container, lotId: string, number: number): Label {
  const { product, packText, receivedOn, openedOn } = container;
  const code = bottleCode({ lotId, number });
  return {
    key: `${lotId}/${number}`,
    code,
    square: squareCode(code),
    product: product.name,
    lot: lotId,
    number,
    pack: packText,
    lastDay: lastUsableDay(container),
    receivedOn,
    openedOn,
    openedDays: product.shelfLife.openedDays,
    signalWord: product.label.signalWord,
  };
}

/** Labels on sheets, from the first one on that is not used. */
function onSheets(labels: Label[], skip: number): (Label | null)[][] {
  if (labels.length === 0) return [];
  const all = [...Array.from({ length: skip }, () => null), ...labels];
  const sheets: (Label | null)[][] = [];
  for (let from = 0; from < all.length; from += LABELS_ON_A_SHEET) {
    sheets.push(all.slice(from, from + LABELS_ON_A_SHEET));
  }
  return sheets;
}
