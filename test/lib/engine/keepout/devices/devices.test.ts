import fc from 'fast-check';
import { expect, test } from 'vitest';
import { finishBodyOf } from '@/shared/mix/finish-body';
import { afterwards, type MixAction } from '@/shared/mix/mix-action';
import { beginMix, type MixProgress, readProgress } from '@/shared/mix/mix-progress';
import { tellingText, untold } from '@/shared/mix/spraying-told';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';
import { isLong, runs } from '@/test/runs';
import { PLAN } from '../../../../shared/mix/a-plan';
import { parsedOrThrow } from '../../../data/any-shop-file';
import { ShopWithDevices } from './a-shop-with-devices';

/*
 * Random histories of devices that mix and spray: begun, started, ended, ended again, reloaded, without a network, sent
 * twice, and a second device at the same planned spraying. Held against a plain model: what really was sprayed, where and
 * until when, and which of it the shop has heard of.
 *
 *   a bench that the shop has heard is sprayed stays closed until the last plant of that spraying and the interval
 *   what is finished becomes one record, however often it is sent, and none is lost once the network is back
 */

const SEED = isLong ? {} : { seed: 20_261_130 };
const START = Date.parse('2026-03-31T20:00:00Z');
const REI_MINUTES = 240;
const MINUTE = 60_000;
const DEVICES = 2;

type Step =
  | { do: 'wait'; minutes: number }
  | { do: 'begin' | 'cut' | 'join'; device: number }
  | { do: 'start' | 'end' | 'finish' | 'reload' | 'send' | 'twice'; device: number }
  | { do: 'benches'; device: number; benches: string[] };

type OfMix = Exclude<Step, { do: 'wait' } | { do: 'begin' | 'cut' | 'join'; device: number }>;

const device = fc.nat({ max: DEVICES - 1 });
const one = (what: 'begin' | 'start' | 'end' | 'finish' | 'reload' | 'send' | 'twice' | 'cut' | 'join') =>
  fc.record({ do: fc.constant(what), device }) as fc.Arbitrary<Step>;
const aStep: fc.Arbitrary<Step> = fc.oneof(
  { weight: 4, arbitrary: one('begin') },
  { weight: 5, arbitrary: one('start') },
  { weight: 5, arbitrary: one('end') },
  { weight: 4, arbitrary: one('finish') },
  { weight: 2, arbitrary: one('reload') },
  { weight: 5, arbitrary: one('send') },
  { weight: 2, arbitrary: one('twice') },
  { weight: 2, arbitrary: one('cut') },
  { weight: 2, arbitrary: one('join') },
  { weight: 4, arbitrary: fc.record({ do: fc.constant('wait' as const), minutes: fc.integer({ min: 0, max: 300 }) }) },
  {
    weight: 1,
    arbitrary: fc.record({
      do: fc.constant('benches' as const),
      device,
      benches: fc.subarray(['b', 'c'], { minLength: 1 }),
    }),
  },
);

const shop = () =>
  parsedOrThrow({
    format: 'bench-and-bottle/shop@1',
    shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '10 L' },
    products: [{ id: 'oil', name: 'oil', kind: 'insecticide', form: 'liquid', label: { reiHours: REI_MINUTES / 60 } }],
    benches: ['b', 'c', 'd'].map((id) => ({ id, name: id })),
    recipes: [{ id: 'r', name: 'r', ingredients: [{ product: 'oil', dose: '2 mL/L' }] }],
    programs: [{ id: 'g', recipes: ['r'], benches: ['b'], startsOn: '2026-03-31', startTime: '17:30', minutes: 30 }],
  });

/** What really happened at one device, as somebody who stood beside it would say. */
type Really = {
  benches: Set<string>;
  end: number | null;
  heardEnd: number | null;
  isHeard: boolean;
  isFinished: boolean;
};

class Devices {
  now = START;
  private readonly its = new ShopWithDevices(shop());
  private readonly mixes: (MixProgress | null)[] = Array.from({ length: DEVICES }, () => null);
  private readonly kept: MixProgress[] = [];
  private readonly really = new Map<string, Really>();
  private readonly isCut = Array.from({ length: DEVICES }, () => false);
  private number = 0;
  readonly seen = { closed: 0, open: 0, records: 0 };

  take(step: Step): void {
    if (step.do === 'wait') this.now += step.minutes * MINUTE;
    else if (step.do === 'begin') this.begin(step.device);
    else if (step.do === 'cut' || step.do === 'join') this.isCut[step.device] = step.do === 'cut';
    else this.on(step as OfMix);
    this.check();
  }

  private begin(at: number): void {
    const before = this.mixes[at];
    // Who has begun goes on with it, and rarely begins another beside it.
    if (before?.state === 'mixing' && (this.now / MINUTE) % 5 > 0) return;
    if (before) this.kept.push(before);
    this.number += 1;
    const plan = {
      ...PLAN,
      fills: 1,
      pours: [],
      pH: null,
      acids: [],
      planned: { program: 'g', on: Day.parse('2026-03-31') },
    };
    this.mixes[at] = beginMix(plan, this.number.toString(16).padStart(32, '0'), this.now);
  }

  private on(step: OfMix): void {
    const mix = this.mixes[step.device];
    if (!mix) return;
    const really = this.really.get(mix.commandId);
    switch (step.do) {
      case 'start':
        if (mix.state !== 'mixing') return;
        if (!really)
          this.really.set(mix.commandId, {
            benches: new Set(),
            end: null,
            heardEnd: null,
            isHeard: false,
            isFinished: false,
          });
        this.act(step.device, { do: 'spraying', since: this.now });
        return;
      case 'end':
        if (mix.state !== 'mixing' || !really) return;
        really.end = this.now;
        this.act(step.device, { do: 'sprayed', until: this.now }, { do: 'go', to: 'finish' });
        return;
      case 'benches':
        this.act(step.device, { do: 'benches', ids: step.benches });
        return;
      case 'reload': {
        const again = readProgress(JSON.stringify(mix));
        if (!again) throw new Error('a reload loses the mix');
        this.mixes[step.device] = again;
        return;
      }
      case 'finish':
        if (mix.state !== 'mixing' || !really) return;
        if (!finishBodyOf(mix).ok) return;
        really.isFinished = true;
        this.act(step.device, { do: 'finish' });
        return;
      default:
        this.send(step.device, step.do === 'twice');
    }
  }

  private act(at: number, ...actions: MixAction[]): void {
    const mix = this.mixes[at];
    if (mix) this.mixes[at] = actions.reduce(afterwards, mix);
  }

  /** All that a device has to tell goes out; where it goes `twice`, its answer is lost the first time. */
  private send(at: number, twice: boolean): void {
    const mix = this.mixes[at];
    if (mix && !this.isCut[at]) this.mixes[at] = this.sent(mix, twice);
  }

  private sent(mix: MixProgress, twice: boolean): MixProgress {
    const telling = untold(mix);
    let after = mix;
    if (telling) {
      this.expectNothingOpens(this.its.tell(telling, instantOf(this.now)), 'telling');
      this.hear(mix);
      if (twice) return mix;
      after = afterwards(mix, { do: 'told', what: tellingText(telling) });
    }
    if (after.state !== 'to-send') return after;
    const body = finishBodyOf(after);
    if (!body.ok) throw new Error(JSON.stringify(body.faults));
    this.expectNothingOpens(this.its.finish(body.body, instantOf(this.now)) ?? [], 'record');
    this.hear(after);
    return twice ? after : afterwards(after, { do: 'sent', application: after.commandId });
  }

  private hear(mix: MixProgress): void {
    const really = this.really.get(mix.commandId);
    if (!really) return;
    really.isHeard = true;
    really.heardEnd = really.end;
    for (const bench of mix.benches) really.benches.add(bench);
  }

  private expectNothingOpens(opened: string[], what: string): void {
    if (opened.length > 0) throw new Error(`a ${what} opens ${opened.join(', ')}`);
  }

  private check(): void {
    const open = this.its.open(instantOf(this.now));
    this.seen.open += open.length;
    for (const [id, { benches, heardEnd: end, isHeard }] of this.really) {
      if (!isHeard) continue;
      const isOver = end !== null && this.now >= end + REI_MINUTES * MINUTE;
      for (const bench of isOver ? [] : benches) {
        this.seen.closed += 1;
        if (open.includes(bench)) throw new Error(`${bench} is open, and ${id} was sprayed there`);
      }
    }
  }

  /** The network is back everywhere, and everything that waits goes out. */
  settle(): void {
    const all = [...this.kept, ...this.mixes.filter((mix) => mix !== null)].map((mix) => this.sent(mix, false));
    this.check();
    const finished = [...this.really].filter(([, { isFinished }]) => isFinished).map(([id]) => id);
    this.seen.records += finished.length;
    expect([...this.its.records].sort()).toEqual(finished.sort());
    expect(all.filter(({ state }) => state === 'to-send')).toEqual([]);
  }
}

test('whatever devices do, no bench opens early, and no mix is recorded twice or lost', { timeout: 3_600_000 }, () => {
  const seen = { closed: 0, open: 0, records: 0 };
  fc.assert(
    fc.property(fc.array(aStep, { minLength: 25, maxLength: 60, size: 'max' }), (steps) => {
      const devices = new Devices();
      for (const step of steps) devices.take(step);
      devices.settle();
      seen.closed += devices.seen.closed;
      seen.open += devices.seen.open;
      seen.records += devices.seen.records;
    }),
    { numRuns: runs(60, 10_000), ...SEED },
  );
  expect(Math.min(seen.closed, seen.open, seen.records)).toBeGreaterThan(15);
});
