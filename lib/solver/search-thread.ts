import { parentPort, workerData } from 'node:worker_threads';
import { isTooLarge } from '@/shared/quantity/amounts';
import { isTooMuchAhead } from '@/shared/shop-file/limits';
import { clock } from '../clock';
import { purchasePlanOf } from '../engine/buying/purchase-plan';
import type { Solver } from '../engine/buying/solver';
import { candidatesFor, wantedIn } from '../engine/equivalents/candidate';
import { type CurvePoint, equivalentsOf, seasonCurve } from '../engine/equivalents/equivalents';
import { seasonOf } from '../engine/equivalents/season';
import type { Product, Recipe, Shop } from '../engine/shop';
import { shopOfFile } from '../engine/shop-of-file';
import type { Answers, Asked, Said, Start } from './asked';
import { solverFor } from './timed';

/*
 * What runs on a thread of its own: a solve blocks the thread it is on, and a server has others to answer.
 */

/** Progress is told so often and no oftener, ms. */
const TELL_EVERY = 100;

/** So many steps up to the planned use, and as many beyond it. */
const STEPS = 6;

const say = (said: Said): void => parentPort?.postMessage(said);

await run(workerData as Start);

async function run({ asked, stop }: Start): Promise<void> {
  let last = Number.NEGATIVE_INFINITY;
  const told: Solver['told'] = (progress) => {
    if (clock.steady() - last < TELL_EVERY) return;
    last = clock.steady();
    say({ progress });
  };
  const solver = await solverFor(asked.seconds, clock, { told, isStopped: () => Atomics.load(stop, 0) === 1 });
  try {
    say({ answer: answerOf(asked, solver) });
  } catch (error) {
    if (isTooMuchAhead(error)) say({ tooMuch: error.message });
    else if (isTooLarge(error)) say({ tooLarge: true });
    else throw error;
  }
}

function answerOf(asked: Asked, solver: Solver): Answers[Asked['what']] {
  const shop = shopOfFile(asked.file);
  const { today, weeks } = asked;
  if (asked.what === 'purchase plan') return purchasePlanOf(shop, today, weeks, solver);
  const recipe = shop.recipes.find(({ id }) => id === asked.recipe);
  const product = shop.products.find(({ id }) => id === asked.product);
  if (asked.what === 'season curve') return curveOf(shop, asked, recipe, product, solver);
  return recipe && product ? equivalentsOf(shop, { recipe, product }, { today, weeks }, solver) : null;
}

type CurveAsked = Extract<Asked, { what: 'season curve' }>;

function curveOf(
  shop: Shop,
  { candidates, today, weeks }: CurveAsked,
  recipe: Recipe | undefined,
  product: Product | undefined,
  solver: Solver,
): CurvePoint[] {
  const wanted = recipe && product ? wantedIn(shop, recipe, product) : null;
  if (!wanted) return [];
  const all = candidatesFor(shop, wanted);
  const ingredients = candidates.flatMap((id) => all.find((one) => one.product.id === id)?.ingredient ?? []);
  return seasonCurve(seasonOf(shop, wanted.recipe, today, weeks), ingredients, solver, STEPS);
}
