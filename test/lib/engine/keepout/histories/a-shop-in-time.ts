import { inForce, keptUntil } from '@/lib/data/in-force';
import type { RecordVersion } from '@/lib/data/record-versions';
import { keptStarts } from '@/lib/engine/ahead/kept-starts';
import { type ClockTrust, confirmed, lagOf, looked, trusted } from '@/lib/engine/keepout/clock-doubt';
import { earlierOpenings } from '@/lib/engine/keepout/earlier-openings';
import { longestRei } from '@/lib/engine/keepout/reopening';
import { waitingIn } from '@/lib/engine/keepout/waiting';
import { keptClosedUntil } from '@/lib/engine/record/amendment';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import type { Application, Shop, SprayingChange } from '@/lib/engine/shop';
import { benchStates } from '@/lib/views/bench-states';
import type { Minutes } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { type Instant, instantOf } from '@/shared/time/instant';
import { Zone } from '@/shared/time/zone';

/*
 * The program's own decisions, driven without a database: what a command decides and what the board shows, with a clock
 * that can be set and may drift.
 */

type Version = { app: Application; closedUntil: Instant | null; isPending: boolean };

export class ShopInTime {
  real: number;
  offset = 0;
  /** Milliseconds that the clock gains in each minute. */
  drift = 0;
  private boots = 1;
  private bootedAt: number;
  private trust: ClockTrust;
  private readonly versions = new Map<string, Version[]>();
  private seen: Shop | null = null;

  constructor(
    private base: Shop,
    start: number,
  ) {
    this.real = start;
    this.bootedAt = start;
    this.trust = trusted(this.reading());
  }

  get shown(): Instant {
    return instantOf(Math.floor(this.real + this.offset));
  }

  private reading() {
    return { now: this.shown, steady: Math.floor(this.real - this.bootedAt), count: `boot ${this.boots}` };
  }

  look(): void {
    this.trust = looked(this.trust, this.reading(), waitingIn([this.shop()]));
  }

  /** Time passes, with a look at the clock each minute that it drifts, and at the end. */
  pass(minutes: number): void {
    const step = this.drift === 0 ? Math.max(1, minutes) : 1;
    for (let left = minutes; left > 0; left -= step) {
      const now = Math.min(step, left);
      this.real += now * 60_000;
      this.offset += now * this.drift;
      this.look();
    }
  }

  /** The machine is off for a while and counts from nought again. */
  restart(minutes: number): void {
    this.real += minutes * 60_000;
    this.boots += 1;
    this.bootedAt = this.real;
    this.look();
  }

  /** Somebody sets the clock right, and says that it was wrong. */
  setRight(): void {
    this.offset = 0;
    this.drift = 0;
    this.look();
    if (this.trust.doubt !== null) this.trust = confirmed(this.trust, this.reading(), false);
  }

  get isDoubted(): boolean {
    return this.trust.doubt !== null;
  }

  board(): string[] {
    const certainty = { doubt: this.trust.doubt === null ? null : ('clock' as const), lag: lagOf(this.trust) };
    return benchStates(this.shop(), this.shown, certainty).flatMap(({ bench, state }) =>
      state === 'open' ? bench.id : [],
    );
  }

  /** The shop as the rows give it: of each record what is in force, and no turn done by a record that counts nowhere. */
  shop(): Shop {
    this.seen ??= this.shopOf(this.base);
    return this.seen;
  }

  private shopOf(base: Shop): Shop {
    const today = new Map(base.recipes.map((recipe) => [recipe.id, recipe]));
    const applications = [...this.versions.values()].map((its) => {
      const record = standing(its);
      return { ...record, recipe: today.get(record.recipe.id) ?? record.recipe };
    });
    const inError = new Set(
      applications.filter((one) => one.withdrawn && one.closedUntil === null).map(({ id }) => id),
    );
    const programs = base.programs.map((program) => ({
      ...program,
      changes: program.changes.flatMap((change) => {
        if (change.application === null || !inError.has(change.application)) return [change];
        return change.movedTo === null ? [] : [{ ...change, kind: 'moved' as const, application: null }];
      }),
    }));
    return { ...base, programs, applications };
  }

  /** Take another shop if it opens nothing earlier, or if somebody confirms it. */
  change(alter: (shop: Shop) => Shop, isSure: boolean): boolean {
    const after = alter(this.base);
    const allowed = { atOnce: false };
    const openings = earlierOpenings(this.shop(), this.shopOf(after), this.shown, allowed);
    if (openings.length > 0 && !isSure) return false;
    this.take(after);
    return true;
  }

  private take(base: Shop): void {
    this.base = base;
    this.seen = null;
  }

  changeZone(zone: string, isSure: boolean): boolean {
    const kept = keptStarts(this.shop(), Zone.parse(zone), this.shown);
    return this.change((shop) => {
      const programs = shop.programs.map((program) =>
        kept.filter((one) => one.program === program.id).reduce((one, { change }) => withChange(one, change), program),
      );
      return { ...shop, programs, zone: Zone.parse(zone) };
    }, isSure);
  }

  told(program: string, change: SprayingChange, isSure: boolean): boolean {
    return this.change((shop) => withTold(shop, program, change), isSure);
  }

  record(
    id: string,
    of: Said & { recipe: string; isExtra: boolean },
    turn: { program: string; on: string } | null,
  ): void {
    const recipe = this.base.recipes.find((one) => one.id === of.recipe);
    if (!recipe) throw new Error(of.recipe);
    const rei = longestRei(recipe);
    const app: Application = { ...BLANK, id, recipe, ...this.said(of), isExtra: of.isExtra, recordedRei: rei };
    const late = { benches: of.benches, endedAt: app.endedAt, rei };
    const closedUntil = closedAfterLateEntry(this.shop(), late, this.shown);
    this.versions.set(id, [{ app, closedUntil, isPending: closedUntil !== null }]);
    const done = { kind: 'done' as const, application: id, reason: null };
    this.take(turn ? withTold(this.base, turn.program, { ...done, ...this.placed(turn.program, turn.on) }) : this.base);
  }

  /** What becomes of an amendment: like every command it may open nothing earlier without a word. */
  amend(id: string, said: Said & { withdrawn: boolean }, isSure: boolean): 'refused' | 'waits' | 'counts' {
    const stood = this.shop();
    const versions = this.versions.get(id) ?? [];
    const newest = versions.at(-1);
    if (!newest) throw new Error(id);
    const until = keptUntil(asRows(versions));
    const stands = standing(versions);
    const endedAt = stands.endedAt ?? newest.app.endedAt;
    const before = { ...stands, endedAt, closedUntil: until === null ? null : instantOf(until) };
    const app = { ...newest.app, ...this.said(said), withdrawn: said.withdrawn };
    const rei = longestRei(app.recipe);
    const late = { benches: said.benches, endedAt: app.endedAt, rei };
    const closedUntil = keptClosedUntil(before, app) ?? closedAfterLateEntry(this.shop(), late, this.shown);
    this.versions.set(id, [...versions, { app, closedUntil, isPending: closedUntil !== null }]);
    this.take(this.base);
    if (!isSure && earlierOpenings(stood, this.shop(), this.shown, { atOnce: true }).length > 0) {
      this.versions.set(id, versions);
      this.take(this.base);
      return 'refused';
    }
    return closedUntil === null ? 'counts' : 'waits';
  }

  confirm(id: string): void {
    const versions = this.versions.get(id) ?? [];
    this.versions.set(
      id,
      versions.map((one, at) => (at === versions.length - 1 ? { ...one, isPending: false } : one)),
    );
    this.take(this.base);
  }

  /** A record as its newest version says it. */
  saidOf(id: string): Application {
    const app = this.versions.get(id)?.at(-1)?.app;
    if (!app) throw new Error(id);
    return app;
  }

  /** Where a turn was moved to, by the clock of the shop; null: it was not. */
  movedTo(program: string, on: string): { day: string; minute: number } | null {
    const its = this.base.programs.find(({ id }) => id === program);
    const change = this.changeOf(program, on);
    return its && change?.movedTo ? { day: change.movedTo, minute: change.startMinute ?? its.startMinute } : null;
  }

  /** A turn by its own day, where it stands now. */
  placed(program: string, on: string): Pick<SprayingChange, 'on' | 'movedTo' | 'startMinute'> {
    const moved = this.changeOf(program, on);
    return { on: Day.parse(on), movedTo: moved?.movedTo ?? null, startMinute: moved?.startMinute ?? null };
  }

  private changeOf(program: string, on: string): SprayingChange | undefined {
    return this.base.programs.find(({ id }) => id === program)?.changes.find((one) => one.on === on);
  }

  /** Give the product of a recipe another interval. */
  relabel(recipe: string, rei: Minutes | null, isSure: boolean): boolean {
    return this.change((shop) => withLabel(shop, recipe, rei), isSure);
  }

  private said({ benches, start, end }: Said) {
    return {
      benches: this.base.benches.filter(({ id }) => benches.includes(id)),
      startedAt: instantOf(start),
      endedAt: end === null ? null : instantOf(end),
    };
  }
}

/** What somebody says of a spraying, by the clock of the shop. */
type Said = { benches: string[]; start: number; end: number | null };

const asRows = (versions: readonly Version[]): RecordVersion[] =>
  versions.map(
    ({ app, closedUntil, isPending }) =>
      ({
        ...{
          benches: app.benches.map(({ id }) => id),
          startedAt: app.startedAt,
          endedAt: app.endedAt,
          isPending,
          products: [],
        },
        details: { closedUntil, withdrawn: app.withdrawn },
      }) as unknown as RecordVersion,
  );

function standing(versions: readonly Version[]): Application {
  const newest = versions.at(-1);
  if (!newest) throw new Error('a record without a version');
  const { benches, startedAt, endedAt, details } = inForce(asRows(versions));
  const all = new Map(versions.flatMap(({ app }) => app.benches).map((bench) => [bench.id, bench]));
  const { withdrawn, closedUntil } = details;
  return {
    ...newest.app,
    ...{ benches: benches.flatMap((id) => all.get(id) ?? []), startedAt, endedAt, withdrawn },
    closedUntil: closedUntil === null ? null : instantOf(closedUntil),
  };
}

/** Records hold what their recipe has, so they are given the same product. */
function withLabel(shop: Shop, id: string, rei: Minutes | null): Shop {
  const relabelled = (recipe: Shop['recipes'][number]) =>
    recipe.id === id
      ? {
          ...recipe,
          ingredients: recipe.ingredients.map((one) => ({
            ...one,
            product: { ...one.product, label: { ...one.product.label, rei } },
          })),
        }
      : recipe;
  const recipes = shop.recipes.map(relabelled);
  const same = new Map(recipes.map((recipe) => [recipe.id, recipe]));
  const programs = shop.programs.map((program) => ({
    ...program,
    recipes: program.recipes.flatMap((one) => same.get(one.id) ?? []),
  }));
  return { ...shop, recipes, programs };
}

const withTold = (shop: Shop, id: string, change: SprayingChange): Shop => ({
  ...shop,
  programs: shop.programs.map((program) => (program.id === id ? withChange(program, change) : program)),
});

const withChange = (program: Shop['programs'][number], change: SprayingChange) => ({
  ...program,
  changes: [...program.changes.filter(({ on }) => on !== change.on), change],
});

const BLANK: Omit<Application, 'id' | 'recipe' | 'benches' | 'startedAt' | 'endedAt'> = {
  ...{ recordedRei: null, amounts: [], by: null, sprayed: null, pH: null, acid: null, plannedCost: null, cost: null },
  ...{ mixedAt: null, temperatureC: null, closedUntil: null, withdrawn: false, isExtra: false },
};
