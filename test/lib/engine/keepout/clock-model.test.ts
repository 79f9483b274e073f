import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  type ClockReading,
  type ClockTrust,
  confirmed,
  lagOf,
  looked,
  type Waiting,
} from '@/lib/engine/keepout/clock-doubt';
import { instantOf } from '@/shared/time/instant';
import { runs } from '@/test/runs';

/*
 * One bench and the time that really passes, beside a clock that is set, drifts, sleeps and restarts. A spraying is written
 * down with the end that the clock shows. The bench may never read open before its interval has really passed.
 */

const [SECOND, MINUTE, HOUR, DAY] = [1_000, 60_000, 3_600_000, 86_400_000];
const BEGIN = Date.UTC(2026, 2, 31, 9);

type Sprayed = { ended: number; recorded: number; interval: number; wrongBy: number };

class Machine {
  real = 0;
  /** By how much the clock is ahead of the real time, and how much that grows each minute. */
  ahead = 0;
  drift = 0;
  steady = 0;
  boot = 1;
  sprayed: Sprayed[] = [];
  memory: ClockTrust | null = null;
  stored: ClockTrust | null = null;
  opened = 0;
  early: string[] = [];

  read = (): ClockReading => ({
    ...{ now: instantOf(BEGIN + Math.floor(this.real + this.ahead)), steady: Math.floor(this.steady) },
    count: `boot ${this.boot}`,
  });

  waiting: Waiting = (proven, _now, since) =>
    this.sprayed.some(({ recorded, interval }) => recorded <= since && recorded + interval > proven);

  look(): void {
    this.memory = looked(this.memory, this.read(), this.waiting);
    this.stored = this.memory;
    this.check();
  }

  /** A page is asked for: it sees the clock, and keeps nothing. */
  check(): void {
    const trust = looked(this.memory, this.read(), () => true);
    const lag = lagOf(trust);
    const { now } = this.read();
    const closed = this.sprayed.some(({ recorded, interval }) => {
      const until = recorded + interval + (lag && recorded <= lag.since ? lag.ms : 0);
      return now < until;
    });
    if (trust.doubt !== null || closed) return;
    const wet = this.sprayed.filter(({ ended, interval }) => this.real < ended + interval - SECOND);
    for (const { ended, interval } of wet) this.early.push(`open ${(ended + interval - this.real) / MINUTE} min early`);
    if (this.sprayed.length > 0) this.opened += 1;
  }

  pass(ms: number): void {
    for (let left = ms; left > 0; left -= MINUTE) {
      const step = Math.min(left, MINUTE);
      this.real += step;
      this.steady += step;
      this.ahead += (this.drift * step) / MINUTE;
      this.look();
    }
  }

  spray(interval: number): void {
    this.look();
    const recorded = BEGIN + Math.ceil(this.real + this.ahead);
    this.sprayed.push({ ended: this.real, recorded, interval, wrongBy: this.ahead });
  }

  sleep(ms: number): void {
    this.real += ms;
    this.look();
  }

  restart(gap: number, isReboot: boolean, jump: number): void {
    this.real += gap;
    this.ahead += jump;
    if (isReboot) {
      this.boot += 1;
      this.steady = 0;
    } else {
      this.steady += gap;
    }
    this.memory = this.stored;
    this.look();
  }

  /** Somebody sets the clock right, and says so; and whether it was right all the while. */
  confirm(): void {
    if (this.memory?.doubt == null) return;
    this.ahead = 0;
    this.drift = 0;
    this.look();
    const wasRight = this.sprayed.every(({ wrongBy }) => wrongBy > -SECOND);
    this.memory = confirmed(this.memory, this.read(), wasRight);
    this.stored = this.memory;
    this.check();
  }
}

const ms = (most: number) => fc.integer({ min: 0, max: most });
const jumps = fc.oneof(
  fc.constantFrom(-DAY, -HOUR, -1.9 * MINUTE, -MINUTE, 9.5 * MINUTE, 5 * HOUR, 23 * HOUR, DAY, 0),
  fc.integer({ min: -3 * MINUTE, max: 12 * MINUTE }),
);

const steps = fc.oneof(
  { arbitrary: fc.record({ do: fc.constant('pass' as const), ms: ms(8 * HOUR) }), weight: 4 },
  { arbitrary: fc.record({ do: fc.constant('pass' as const), ms: ms(5 * MINUTE) }), weight: 3 },
  { arbitrary: fc.record({ do: fc.constant('spray' as const), ms: ms(24 * HOUR) }), weight: 3 },
  { arbitrary: fc.record({ do: fc.constant('jump' as const), ms: jumps }), weight: 3 },
  {
    arbitrary: fc.record({
      do: fc.constant('drift' as const),
      ms: fc.constantFrom(0, 1.2, -1.2, 30, -30, 9.5 * MINUTE, -MINUTE),
    }),
    weight: 2,
  },
  { arbitrary: fc.record({ do: fc.constant('sleep' as const), ms: ms(30 * HOUR) }), weight: 1 },
  {
    arbitrary: fc.record({ do: fc.constant('restart' as const), ms: ms(26 * HOUR), boot: fc.boolean(), jump: jumps }),
    weight: 2,
  },
  { arbitrary: fc.constant({ do: 'confirm' as const }), weight: 3 },
);

test('no bench opens early, however its clock is set, drifts, sleeps and restarts', () => {
  let opened = 0;
  fc.assert(
    fc.property(fc.array(steps, { maxLength: 25 }), (history) => {
      const machine = new Machine();
      machine.look();
      for (const step of history) {
        if (step.do === 'confirm') machine.confirm();
        else if (step.do === 'restart') machine.restart(step.ms, step.boot, step.jump);
        else if (step.do === 'jump') machine.ahead += step.ms;
        else if (step.do === 'drift') machine.drift = step.ms;
        else machine[step.do](step.ms);
        machine.check();
      }
      opened += machine.opened;
      expect(machine.early).toEqual([]);
    }),
    { numRuns: runs(300, 20_000) },
  );
  // Benches do open: a model that never opens any would pass everything above.
  expect(opened).toBeGreaterThan(300);
});
