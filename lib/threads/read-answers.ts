import 'server-only';
import type { z } from 'zod';
import type { LogQuestion } from '@/shared/api/questions';
import type { WhatIfQuestion } from '@/shared/forms/what-if';
import type { Written } from '@/shared/json/written';
import { accept, type Outcome } from '@/shared/outcome';
import type { Clock } from '../clock';
import { database } from '../data/database';
import { keptHere } from '../data/kept';
import { isSmall, shopSize } from '../data/shop-size';
import { askedShop } from '../views/asked-shop';
import { BudgetQuery, budgetScreen } from '../views/budget';
import type { BudgetScreen } from '../views/budget-seen';
import { shopNow } from '../views/house';
import { recordsAnswer, recordsCsv } from '../views/log';
import type { RecordsDocument } from '../views/record-document';
import type { RecordsForm } from '../views/records-exported';
import { type WhatIfSaid, whatIfAnswer } from '../views/what-if';
import { readOnThread } from './on-job-thread';

/*
 * Questions about a shop as it stands: answered here of a small shop, and on a thread of its own of a large one.
 */

/** What supposing something would do. Only a further spraying has every rule looked at again; all else takes a moment. */
export async function whatIfAsked(
  { shop, ...fields }: z.output<typeof WhatIfQuestion>,
  clock: Clock,
  signal: AbortSignal,
): Promise<Outcome<WhatIfSaid | Written>> {
  const found = await askedShop(shop);
  if (!found.ok) return found;
  if (fields.extra === '' || isSmall(await shopSize(shop))) return whatIfAnswer({ ...fields, shop }, clock);
  return readOnThread({ what: 'what if', shop, fields }, { signal });
}

/** The records of a shop with every version, as a document or as a list. */
export async function recordsAsked(
  asked: z.output<typeof LogQuestion>,
  form: RecordsForm,
  clock: Clock,
  signal: AbortSignal,
): Promise<Outcome<RecordsDocument | string | Written>> {
  const found = await askedShop(asked.shop);
  if (!found.ok) return found;
  const { id } = found.value;
  const { shop: _, ...query } = asked;
  if (!isSmall(await shopSize(id))) return readOnThread({ what: 'records', shop: id, query, form }, { signal });
  return form === 'csv' ? recordsCsv(asked, clock) : recordsAnswer(asked, clock);
}

/** A budget as it was told of one state of a shop on one day. */
type KeptScreen = { state: string; screen: BudgetScreen };

const screens = keptHere<KeptScreen>('budget screens', { things: 8 });

/** The budget of the shop that is looked at. Null when there is none; refused where it takes too much to work out. */
export async function budgetAsked(clock: Clock, search: unknown): Promise<Outcome<BudgetScreen> | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { id, today } = here;
  if (isSmall(await shopSize(id))) {
    const screen = await budgetScreen(clock, search);
    return screen && accept(screen);
  }
  const { by } = BudgetQuery.parse(search);
  const { file, marks } = await database();
  // Asked before it is worked out: what is told may be newer, and never older.
  const state = `${await marks.stateOf(id)} ${today}`;
  const name = `${file} ${id} ${by}`;
  const kept = screens.get(name);
  if (kept?.state === state) return accept(kept.screen);
  const outcome = await readOnThread({ what: 'budget', shop: id, by });
  if (!outcome.ok) return outcome;
  const screen: BudgetScreen = await new Response(outcome.value.pieces).json();
  screens.set(name, { state, screen });
  return accept(screen);
}
