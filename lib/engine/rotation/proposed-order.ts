import { countTurn, type Mode, modesByRecipe, noRuns, type Runs } from '../rules/mode-runs';
import { type Turn, turnsOf } from '../rules/turns';
import type { Unflagged } from '../rules/unflagged';
import type { Program, Recipe } from '../shop';

/** An order for the recipes of a program, and how often it repeats a mode of action too often in a row. */
export type ProposedOrder = {
  program: Program;
  /** The recipes of the program, in the order that repeats least. */
  recipes: Recipe[];
  /** Whether that is the order which the program has. */
  isAsNow: boolean;
  /** How often a group comes more often in a row than the shop allows, on the program's benches: as it is, and so. */
  repeatsNow: number;
  repeats: number;
  /** Whether every order was weighed, so that none repeats less. */
  proven: boolean;
};

/**
 * The order of a program's recipes that keeps the limit of modes in a row, or where none does, the one that breaks it least.
 *
 * Takes    the plan with what is on record, and a program of it; other programs stay as they are
 * Gives    every planned turn on the program's benches counted, those of others too, as `mode-repeated` counts them. Among
 *          orders that are as good, the one that the program has, or else the first that changes it late
 */
export function proposedOrder(plan: Unflagged, program: Program): ProposedOrder {
  const own = new Set(program.benches.map(({ id }) => id));
  const turns = turnsOf(plan).filter(({ spots }) => spots.some(({ bench }) => own.has(bench.id)));
  const search = new Search(program, turns, { own, most: plan.shop.sameModeInARow });
  return { program, ...search.result() };
}

/** So many choices are weighed at most: every order of seven recipes, and the likelier ones of more. */
const MOST_CHOICES = 20_000;

/** What each bench has had up to a turn, and how often that was too often. */
type Walked = { runs: ReadonlyMap<string, Runs>; repeats: number };
/** Which recipe comes at each place of the rotation; null as long as it is not chosen. */
type Places = readonly (Recipe | null)[];

/**
 * A walk through the turns that chooses a recipe for a place of the rotation only when its turn comes, and gives up a way
 * as soon as it is no better than the best one known. The program's own order is walked first.
 */
class Search {
  private readonly modesOf = modesByRecipe();
  private best: { recipes: readonly Recipe[]; repeats: number } | null = null;
  private choices = 0;

  constructor(
    private readonly program: Program,
    private readonly turns: readonly Turn[],
    private readonly rule: { own: ReadonlySet<string>; most: number },
  ) {}

  result(): Omit<ProposedOrder, 'program'> {
    const { recipes } = this.program;
    this.walk(0, { runs: new Map(), repeats: 0 }, recipes, []);
    const repeatsNow = this.best?.repeats ?? 0;
    this.walk(
      0,
      { runs: new Map(), repeats: 0 },
      recipes.map(() => null),
      recipes,
    );
    const best = this.best ?? { recipes, repeats: repeatsNow };
    const isAsNow = best.recipes.every((recipe, place) => recipe === recipes[place]);
    return {
      recipes: [...best.recipes],
      isAsNow,
      repeatsNow,
      repeats: best.repeats,
      proven: best.repeats === 0 || this.choices <= MOST_CHOICES,
    };
  }

  private walk(from: number, before: Walked, places: Places, left: readonly Recipe[]): void {
    let walked = before;
    for (let at = from; at < this.turns.length; at += 1) {
      const turn = this.turns[at];
      if (!turn || this.isNoBetter(walked)) return;
      const place = this.placeOf(turn);
      const recipe = place === null ? turn.recipe : places[place];
      if (place !== null && !recipe) {
        this.choose(at, walked, { places, left, place });
        return;
      }
      walked = this.after(walked, turn, recipe ?? turn.recipe);
    }
    if (this.isNoBetter(walked)) return;
    // What never has its turn in the time looked at keeps its order.
    const rest = [...left];
    this.best = {
      recipes: places.map((recipe) => recipe ?? rest.shift()).filter((one) => one !== undefined),
      repeats: walked.repeats,
    };
  }

  private choose(
    at: number,
    walked: Walked,
    { places, left, place }: { places: Places; left: readonly Recipe[]; place: number },
  ): void {
    const usual = this.program.recipes[place];
    const inTurn = [...new Set(usual && left.includes(usual) ? [usual, ...left] : left)];
    for (const recipe of inTurn) {
      this.choices += 1;
      if (this.choices > MOST_CHOICES) return;
      const without = left.toSpliced(left.indexOf(recipe), 1);
      this.walk(at, walked, places.with(place, recipe), without);
    }
  }

  /** Which place of the rotation a turn of the program has; null for any other turn. */
  private placeOf({ planned }: Turn): number | null {
    return planned?.program === this.program ? planned.occurrence % this.program.recipes.length : null;
  }

  private isNoBetter = ({ repeats }: Walked): boolean => this.best !== null && repeats >= this.best.repeats;

  private after({ runs, repeats }: Walked, { spots, planned }: Turn, recipe: Recipe): Walked {
    const modes = this.modesOf(recipe);
    if (modes.length === 0) return { runs, repeats };
    const next = new Map(runs);
    let more = 0;
    for (const { bench } of spots) {
      if (!this.rule.own.has(bench.id)) continue;
      const { counted, over } = this.counted(runs.get(bench.id), modes);
      next.set(bench.id, counted);
      if (planned) more += over;
    }
    return { runs: next, repeats: repeats + more };
  }

  private counted(before: Runs | undefined, modes: readonly Mode[]) {
    const counted = before ? { turns: before.turns, modes: new Map(before.modes) } : noRuns();
    return { counted, over: countTurn(counted, modes, this.rule.most).filter(({ isOver }) => isOver).length };
  }
}
