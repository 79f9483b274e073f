import { minutes as minutesOf } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import type { ShopInTime } from './a-shop-in-time';
import {
  benchesOf,
  DAYS,
  heldBy,
  type Model,
  type ModelRecord,
  openTurns,
  someTurn,
  stopsOf,
  turnFor,
  turnsOf,
  wallTime,
  whyOut,
  without,
  withRecord,
} from './plain-model';
import { type Step, withProgram } from './step';

const MINUTE = 60_000;

/** One history: each step is taken by the program and by the plain model, and the board is looked at after each. */
export class History {
  readonly seen = { open: 0, out: 0 };
  private readonly log: string[] = [];

  constructor(
    private readonly its: ShopInTime,
    private model: Model,
    private readonly isClockFaulty: boolean,
  ) {}

  take(step: Step): void {
    this.log.push(`${new Date(this.its.real).toISOString()} ${JSON.stringify(step)}`);
    this[step.do](step as never);
    this.check();
  }

  private check(): void {
    const open = this.its.board();
    this.seen.open += open.length;
    for (const { id } of this.its.shop().benches) {
      const why = whyOut(this.model, id, this.its.real, this.its.shown);
      if (why !== null) this.seen.out += 1;
      if (why !== null && open.includes(id)) this.fail(`${id} opens early: ${why}`);
    }
  }

  private fail(what: string): never {
    throw new Error(
      [
        what,
        ...this.log,
        `now ${new Date(this.its.real).toISOString()}, shown ${new Date(this.its.shown).toISOString()}`,
      ].join('\n'),
    );
  }

  /** Let time pass, with looks at the board on the way. */
  private pass(minutes: number): void {
    const stops = stopsOf(this.model, this.its).filter((at) => at > 0 && at < minutes);
    let passed = 0;
    for (const at of [...new Set(stops.map(Math.floor))].sort((a, b) => a - b)) {
      this.its.pass(at - passed);
      passed = at;
      this.check();
    }
    this.its.pass(minutes - passed);
    this.check();
  }

  /** A change that the program took: without a word it may shorten nothing. */
  private accept(next: Model, isTaken: boolean, isSure: boolean): void {
    if (!isTaken) return;
    if (!isSure) this.expectNoShortening(next);
    this.model = next;
  }

  private expectNoShortening(next: Model, fresh: string[] = []): void {
    const { real, shown } = this.its;
    const ends = this.model.records.flatMap((record) =>
      this.its.shop().benches.map(({ id }) => heldBy(this.model, record, id) ?? 0),
    );
    const moments = [real, ...ends.map((end) => end - 1), ...ends].filter((at) => at >= real);
    for (const { id } of this.its.shop().benches) {
      for (const at of moments) {
        const before = whyOut(this.model, id, at, shown);
        if (before?.startsWith('turn') && fresh.includes(id)) continue;
        if (before !== null && whyOut(next, id, at, shown) === null)
          this.fail(`${id} opens by an unconfirmed change: ${before}`);
      }
    }
  }

  private wait({ minutes }: Extract<Step, { do: 'wait' }>): void {
    this.pass(minutes);
  }

  private until({ by }: Extract<Step, { do: 'until' }>): void {
    const starts = turnsOf(this.model).map(({ at }) => (at - this.its.shown) / MINUTE + by);
    const next = Math.min(...starts.filter((minutes) => minutes >= 0));
    if (Number.isFinite(next)) this.pass(Math.min(2_000, Math.floor(next)));
  }

  private tidy(): void {
    const begun = openTurns(this.model).filter(({ at, open }) => at <= this.its.shown && open.length > 0);
    for (const { key, program } of begun) {
      const spraying = {
        do: 'spray',
        recipe: program.recipe,
        benches: program.benches,
        minutes: 0,
        late: 0,
        pick: 0,
      } as const;
      this.spray({ ...spraying, says: 'turn' }, key);
    }
  }

  private spray(asked: Extract<Step, { do: 'spray' }>, key: string | null = null): void {
    // Mostly what a program sprays, where it sprays it.
    const like = this.model.programs[asked.pick % 5];
    const step = like && key === null ? { ...asked, recipe: like.recipe, benches: like.benches } : asked;
    const id = `a${this.model.records.length}`;
    const [from, shownFrom] = [this.its.real, this.its.shown];
    if (step.says !== 'running') this.pass(step.minutes);
    const [to, shownTo] = [this.its.real, this.its.shown];
    // The clock was set back meanwhile: a spraying that ends before it began is refused.
    if (shownTo < shownFrom) return;
    if (step.says !== 'running') this.pass(step.late);
    const isRunning = step.says === 'running';
    const turn = step.says === 'turn' ? turnFor(this.model, this.its.shown, step, key) : null;
    if (step.says === 'turn' && turn === null) return;
    const recipe = turn?.program.recipe ?? step.recipe;
    const said = { benches: step.benches, start: shownFrom, end: isRunning ? null : shownTo };
    const isExtra = step.says === 'extra';
    this.its.record(
      id,
      { ...said, recipe, isExtra },
      turn && { program: turn.program.id, on: turn.key.split(' ')[1] ?? '' },
    );
    const version = {
      benches: step.benches,
      start: from,
      written: shownFrom,
      end: isRunning ? null : to,
      withdrawn: false,
    };
    const record: ModelRecord = { id, recipe, isExtra, rei: this.model.labels[recipe] ?? null, versions: [version] };
    const told = turn ? { ...this.model.told, [turn.key]: { record: id } } : this.model.told;
    this.model = { ...this.model, records: [...this.model.records, record], told };
  }

  private end({ pick }: Extract<Step, { do: 'end' }>): void {
    const running = this.model.records.filter(
      ({ versions }) => versions.length === 1 && versions[0]?.end === null && !versions[0].withdrawn,
    );
    const record = running[pick % Math.max(1, running.length)];
    const version = record?.versions[0];
    if (!record || !version || version.start + this.its.offset > this.its.shown) return;
    this.amendTo(record, { ...version, end: this.its.real }, this.shownStart(record), this.its.shown, false);
  }

  private amend(step: Extract<Step, { do: 'amend' }>): void {
    const record = this.model.records[step.pick % Math.max(1, this.model.records.length)];
    const version = record?.versions.at(-1);
    if (!record || !version) return;
    // With a wrong clock nobody types times anew: what they would mean is anybody's guess.
    const shift = (at: number, by: number) => (this.isClockFaulty ? at : Math.min(at + by * MINUTE, this.its.real));
    const start = shift(version.start, step.start);
    const end = version.end === null ? null : Math.max(start, shift(version.end, step.end));
    const written = this.isClockFaulty ? version.written : start;
    const next = { benches: step.benches ?? version.benches, start, written, end, withdrawn: step.withdrawn };
    const shown = this.isClockFaulty ? this.shownTimes(record) : { start, end };
    this.amendTo(record, next, shown.start, shown.end, step.isSure);
  }

  private shownTimes({ id }: ModelRecord) {
    const versions = this.its.saidOf(id);
    return { start: versions.startedAt as number, end: versions.endedAt as number | null };
  }

  private shownStart = (record: ModelRecord): number => this.shownTimes(record).start;

  private amendTo(
    record: ModelRecord,
    version: ModelRecord['versions'][number],
    start: number,
    end: number | null,
    isSure: boolean,
  ): void {
    const said = { benches: version.benches, start, end, withdrawn: version.withdrawn };
    const became = this.its.amend(record.id, said, isSure);
    if (became === 'refused') return;
    const isAtOnce = became === 'counts';
    if (!isAtOnce && isSure) this.its.confirm(record.id);
    const isSettled = isAtOnce || isSure;
    const isUnknown = benchesOf(record).some((bench) => heldBy(this.model, record, bench) === null);
    const versions = isSettled ? [version] : [...record.versions, version];
    const next = withRecord(this.model, { ...record, versions, wasUnknown: !isSettled && isUnknown });
    const [was] = record.versions;
    const isJustEnded =
      record.versions.length === 1 &&
      was?.end === null &&
      version.end !== null &&
      was.start >= version.start &&
      was.benches.every((bench) => version.benches.includes(bench));
    // A bench that the record names now has its record. One that counted nowhere is a new record on all of its benches.
    const counted = record.versions.filter(({ withdrawn }) => !withdrawn);
    const fresh = version.benches.filter((bench) => !counted.some(({ benches }) => benches.includes(bench)));
    if (isAtOnce && !isJustEnded && !isSure) this.expectNoShortening(next, fresh);
    this.model = next;
  }

  private skip({ pick, isSure }: Extract<Step, { do: 'skip' }>): void {
    const turn = someTurn(this.model, this.its.shown, pick);
    if (!turn) return;
    const [program = '', on = ''] = turn.key.split(' ');
    const change = { ...this.its.placed(program, on), application: null, kind: 'skipped' as const, reason: 'rain' };
    const isTaken = this.its.told(turn.program.id, change, isSure);
    this.accept({ ...this.model, told: { ...this.model.told, [turn.key]: { skipped: true } } }, isTaken, isSure);
  }

  private changeOf = (key: string) => ({ on: Day.parse(key.split(' ')[1]), application: null });

  private move({ pick, by, isSure }: Extract<Step, { do: 'move' }>): void {
    const turn = someTurn(this.model, this.its.shown, pick);
    if (!turn) return;
    const to =
      DAYS[
        Math.floor(
          (Math.max(turn.at, this.its.shown) + by * MINUTE - Date.parse(`${DAYS[0]}T00:00:00Z`)) / (24 * 60 * MINUTE),
        )
      ];
    if (to === undefined) return;
    const minute = 300 + (Math.abs(by) % 1_080);
    const change = {
      ...this.changeOf(turn.key),
      kind: 'moved' as const,
      movedTo: Day.parse(to),
      startMinute: minute,
      reason: null,
    };
    const isTaken = this.its.told(turn.program.id, change, isSure);
    const places = { ...this.model.places, [turn.key]: wallTime(this.model.zone, to, minute) };
    this.accept({ ...this.model, places, told: without(this.model.told, turn.key) }, isTaken, isSure);
  }

  private zone({ zone, isSure }: Extract<Step, { do: 'zone' }>): void {
    const begun = turnsOf(this.model).filter(({ at, told }) => at <= this.its.shown && told === null);
    // A turn that was moved by hand stays on its day and time of the clock, like all that is to come.
    const places: Record<string, number> = {};
    let told = this.model.told;
    for (const { key, at } of turnsOf(this.model)) {
      const moved = this.its.movedTo(key.split(' ')[0] ?? '', key.split(' ')[1] ?? '');
      if (moved) places[key] = wallTime(zone, moved.day, moved.minute);
      if (!begun.some((one) => one.key === key)) continue;
      places[key] = at;
      told = without(told, key);
    }
    const isTaken = this.its.changeZone(zone, isSure);
    this.accept({ ...this.model, zone, places, told }, isTaken, isSure);
  }

  private program({ pick, to, isSure }: Extract<Step, { do: 'program' }>): void {
    const program = this.model.programs[pick % this.model.programs.length];
    if (!program) return;
    const next = { ...program, ...to, every: program.every };
    const isTaken = this.its.change((shop) => withProgram(shop, program.id, to), isSure);
    const programs = this.model.programs.map((one) => (one.id === program.id ? next : one));
    this.accept({ ...this.model, programs }, isTaken, isSure);
  }

  private label({ recipe, minutes, isSure }: Extract<Step, { do: 'label' }>): void {
    const rei = minutes === null ? null : minutesOf(minutes);
    const isTaken = this.its.relabel(recipe, rei, isSure);
    this.accept({ ...this.model, labels: { ...this.model.labels, [recipe]: minutes } }, isTaken, isSure);
  }

  private jump({ minutes }: Extract<Step, { do: 'jump' }>): void {
    this.its.offset += minutes * MINUTE;
    this.its.look();
  }

  private drift({ perMinute }: Extract<Step, { do: 'drift' }>): void {
    this.its.drift = perMinute;
    this.pass(45);
    this.its.drift = 0;
  }

  private restart({ minutes }: Extract<Step, { do: 'restart' }>): void {
    this.its.restart(minutes);
  }

  private right(): void {
    this.its.setRight();
  }
}
