import type { Bench, Product } from '../shop';
import type { Flag } from './flag';
import { alikeInWords, counted, listed } from './in-words';
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
 * Fires     at each planned spraying that brings a group more often in a row than the shop allows, or one of high risk
 *           twice in a row; once for a spraying and product, the first in the mix with that group, with every bench
 *           concerned. Sub-groups count as their group; what is multi-site or of unknown mode is never a repetition
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
      for (const { mode, run, isOver } of countTurn(runsOn(spot), modes, most)) {
        if (isOver) repeats.push({ mode, run, bench: spot.bench });
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
  const modes = [...new Set(repeats.map(({ mode }) => mode))];
  const facts = modes.map((mode) => {
    const its = repeats.filter((one) => one.mode === mode);
    return `${named(mode)} comes ${alikeInWords(its, ({ run }) => `${counted(run, 'time')} in a row`)}`;
  });
  const remedy = 'Use a product of another mode group here, or put one in between.';
  return `${facts.join('; ')}, here with ${product.name}. ${allowed(modes, most)} ${remedy}`;
}

/** A group with its sub-group, and the group that this counts as: "IRAC 4A (group 4)". */
const named = ({ group, text }: Mode): string =>
  group === text || !text.startsWith(group) ? text : `${text} (group ${group.replace(/^.* /, '')})`;

function allowed(modes: readonly Mode[], most: number): string {
  const grave = modes.filter(({ standing }) => standing === 'high risk').map(({ group }) => group);
  const says = `${listed(grave)} ${grave.length === 1 ? 'is' : 'are'} of high resistance risk, so once in a row is the most.`;
  return [
    ...(grave.length > 0 ? [says] : []),
    ...(grave.length < modes.length ? [`This shop allows ${most} in a row.`] : []),
  ].join(' ');
}
