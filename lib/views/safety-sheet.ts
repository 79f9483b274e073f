import 'server-only';
import type { z } from 'zod';
import type { SheetQuestion } from '@/shared/forms/safety-sheet';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { showDayOnPaper } from '@/shared/time/show-day';
import { dayOf, type Zone } from '@/shared/time/zone';
import { type SheetKept, sheetsKept, sheetWithBytes } from '../data/safety-sheets';
import { askedShop } from './asked-shop';

/** A sheet that can be opened. */
export type SheetShown = {
  number: number;
  href: string;
  fileName: string;
  when: string;
  who: string;
  isAway: boolean;
};

/** The bytes of a product's sheet, and what it is called. Refuses 'not-found'. */
export async function sheetAnswer({
  shop,
  product,
  number,
}: z.output<typeof SheetQuestion>): Promise<Outcome<Uint8Array>> {
  const asked = await askedShop(shop);
  if (!asked.ok) return asked;
  const sheet = await sheetWithBytes(asked.value.id, product, number);
  return sheet ? accept(sheet.bytes) : refuse({ code: 'not-found', what: 'safety data sheet', id: product });
}

/** The sheets of a product, the newest first. The first that is not put away counts. */
export async function sheetsOf(shopId: string, product: string, zone: Zone): Promise<SheetShown[]> {
  return (await sheetsKept(shopId, product)).map((sheet) => sheetShown(sheet, zone));
}

/** The sheet that counts of each product that has one. */
export async function sheetByProduct(shopId: string, zone: Zone): Promise<ReadonlyMap<string, SheetShown>> {
  const oldestFirst = (await sheetsKept(shopId)).filter(({ isAway }) => !isAway).reverse();
  return new Map(oldestFirst.map((sheet) => [sheet.product, sheetShown(sheet, zone)]));
}

const sheetShown = ({ product, number, fileName, actor, recordedAt, isAway }: SheetKept, zone: Zone): SheetShown => ({
  ...{ number, fileName, isAway, who: actor, when: showDayOnPaper(dayOf(zone, recordedAt)) },
  href: `/api/v1/sheet?${new URLSearchParams({ product, number: `${number}` })}`,
});
