import type { Bench, Product } from '../shop';
import type { Flag } from './flag';
import { alikeInWords, counted } from './in-words';
import { countTurn, type Mode, modesByRecipe, noRuns } from './mode-runs';
import { flagSpraying } from './raise';
import { benchMemory, type Turn, turnsOf } from './turns';
import type { Unflagged } from './unflagged';

/**
 * The same mode of action too often in a row on a bench, which breeds resistance.
 *
 * Looks at  each bench by itself: applications on record and planned sprayings that contain any mode-of-action group, in
 *           order; what contains none neither counts nor interrupts. A stock solution brings the groups of what it is
 *           made from
 * Fires     at each planned spraying that brings a group more often in a row than the shop allows; once for a spraying
 *           and product, the first in the mix with that group, with every bench concerned
 * Severity  warn
 * Cleared   by a product of another group here, or in between
 */
export function modeRepeated(plan: Unflagged, turns: Turn[] = turnsOf(plan)): Flag[] {
  const most = plan.shop.sameModeInARow;
  const modesOf = modesByRecipe();
  const runsOn = benchMemory(noRuns);
  const flags: Flag[] = [];
  for (const turn of turns) {
    const modes = modesOf(turn.recipe);
    if (modes.length === 0) continue;
    const repeats: Repeat[] = [];
    for (const spot of turn.spots) {
      for (const { mode, run } of countTurn(runsOn(spot), modes)) {
        if (run > most) repeats.push({ mode, run, bench: spot.bench });
      }
    }
    const { planned } = turn;
    if (!planned || repeats.length === 0) continue;
    for (const product of new Set(repeats.map(({ mode }) => mode.product))) {
      const its = repeats.filter(({ mode }) => mode.product === product);
      const benches = [...new Set(its.map(({ bench }) => bench))];
      const about = { rule: 'mode-repeated', severity: 'warn', benches, product } as const;
      flags.push(flagSpraying(planned, about, () => messageFor(product, most, its)));
    }
  }
  return flags;
}

type Repeat = { mode: Mode; run: number; bench: Bench };

function messageFor(product: Product, most: number, repeats: Repeat[]): string {
  const facts = [...new Set(repeats.map(({ mode }) => mode.text))].map((text) => {
    const its = repeats.filter(({ mode }) => mode.text === text);
    return `${text} comes ${alikeInWords(its, ({ run }) => `${counted(run, 'time')} in a row`)}`;
  });
  return `${facts.join('; ')}, here with ${product.name}. This shop allows ${most} in a row. Use a product of another mode group here, or put one in between.`;
}
