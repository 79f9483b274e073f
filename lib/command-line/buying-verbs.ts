import { clock } from '@/lib/clock';
import { buyDocument } from '@/lib/engine/buying/buy-document';
import { purchasePlanOf } from '@/lib/engine/buying/purchase-plan';
import { equivalentsAnswerOf } from '@/lib/engine/equivalents/equivalents-answer';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { solverFor } from '@/lib/solver/timed';
import type { ShopFile } from '@/shared/shop-file/contract';
import { type LeftOut, leftOutIn } from '@/shared/shop-file/left-out';
import {
  type Answer,
  answerOf,
  type Options,
  productIn,
  recipeIn,
  secondsIn,
  todayIn,
  weeksIn,
  wrongIn,
} from './options';

const WEEKS = '52';
const SECONDS = '10';

export const BUY_OPTIONS = { '--today': '2026-03-02', '--weeks': WEEKS, '--seconds': SECONDS };

export const EQUIVALENTS_OPTIONS = { '--recipe': 'r1', '--product': 'p1', ...BUY_OPTIONS };

/** What to buy, when and from whom, for all that a shop file plans to spray. */
export async function buy(file: ShopFile, options: Options, text: string): Promise<Answer> {
  const ours = shopOfFile(file);
  const today = todayIn(ours, options.get('--today'));
  const weeks = weeksIn(options.get('--weeks') ?? WEEKS);
  const seconds = secondsIn(options.get('--seconds') ?? SECONDS);
  if (!today.ok || !weeks.ok || !seconds.ok) return { ok: false, messages: wrongIn([today, weeks, seconds]) };
  const solver = await solverFor(seconds.value, clock);
  const plan = purchasePlanOf(ours, today.value, weeks.value, solver);
  return { ok: true, value: buyDocument(plan, leftOutOf(text)) };
}

/** The settings that the file as it was written leaves out. Editors may begin it with a mark that nobody sees. */
const leftOutOf = (text: string): LeftOut[] => leftOutIn(JSON.parse(text.replace(/^\uFEFF/, '')));

/** What could stand in a recipe in the place of one of its products, and what each would cost. */
export async function equivalents(file: ShopFile, options: Options, text: string): Promise<Answer> {
  const ours = shopOfFile(file);
  const today = todayIn(ours, options.get('--today'));
  const weeks = weeksIn(options.get('--weeks') ?? WEEKS);
  const seconds = secondsIn(options.get('--seconds') ?? SECONDS);
  const recipe = recipeIn(ours, options.get('--recipe'));
  const product = productIn(ours, recipe.ok ? recipe.value : null, options.get('--product'));
  if (!today.ok || !weeks.ok || !seconds.ok || !recipe.ok || !product.ok)
    return { ok: false, messages: wrongIn([recipe, product, today, weeks, seconds]) };
  const asked = { recipe: recipe.value, product: product.value };
  const solver = await solverFor(seconds.value, clock);
  const when = { today: today.value, weeks: weeks.value };
  const outcome = equivalentsAnswerOf(ours, asked, when, solver, leftOutOf(text));
  return outcome.ok ? outcome : answerOf(outcome.refusal);
}
