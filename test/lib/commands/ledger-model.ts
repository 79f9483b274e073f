import fc from 'fast-check';

/*
 * What the ledger of a bottle should do, written a second time and as plainly as can be: whole millilitres, hours of one
 * day, and every question answered by adding up all the lines again.
 */

export const SIZE = 500;
const RECEIVED_AT = -1;
/** The days on which hours of the tests' day fall in New York, where it is four hours earlier. */
const dayAt = (hour: number) => (hour < 4 ? '2026-03-30' : '2026-03-31');
const TODAY = '2026-03-31';
const RECEIVED_ON = '2026-03-30';

type Line = { at: number; change: number; kind: string; back: Line | null; isBack: boolean };
export type ModelBottle = { lines: Line[]; openedOn: string | null; keptIn: string | null; expiresOn: string | null };

/** A bottle that was just received. */
export const newModel = (): ModelBottle => ({
  lines: [{ at: RECEIVED_AT, change: SIZE, kind: 'received', back: null, isBack: false }],
  ...{ openedOn: null, keptIn: null, expiresOn: null },
});

const amount = fc.integer({ min: 1, max: 400 });
const hour = fc.integer({ min: 1, max: 8 });
const day = fc.constantFrom('2026-03-29', RECEIVED_ON, TODAY, '2026-04-01');

/** Anything a person may do to a bottle. Amounts are small against it, so that about half of it is refused. */
export const deed = fc.oneof(
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('draw' as const), amount, hour }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('discard' as const), amount, hour, back: fc.boolean() }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('discard-all' as const), hour }) },
  {
    weight: 3,
    arbitrary: fc.record({
      kind: fc.constant('count' as const),
      amount,
      hour,
      says: fc.boolean(),
      looks: fc.boolean(),
    }),
  },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('reverse' as const), line: fc.nat(11) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('open' as const), day }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('shut' as const) }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('move' as const), to: fc.constantFrom('shelf', 'shed', null) }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('date' as const), day }) },
);
export type Deed = typeof deed extends fc.Arbitrary<infer T> ? T : never;

/** What the bottle holds at the end of an hour, and after each later line, those of one hour as they were written down. */
function heldFrom({ lines }: ModelBottle, from: number): number[] {
  const now = lines.filter(({ at }) => at <= from).reduce((held, { change }) => held + change, 0);
  const later = HOURS.filter((hour) => hour > from).flatMap((hour) => lines.filter(({ at }) => at === hour));
  return [now, ...later.map((_, last) => later.slice(0, last + 1).reduce((held, { change }) => held + change, now))];
}

const HOURS = [RECEIVED_AT, 1, 2, 3, 4, 5, 6, 7, 8];

/** Whether it holds between nothing and everything at every instant, those of one hour taken one after another. */
const isPossible = (lines: Line[]): boolean => {
  let held = 0;
  return HOURS.every((hour) =>
    lines
      .filter(({ at }) => at === hour)
      .every(({ change }) => {
        held += change;
        return held >= 0 && held <= SIZE;
      }),
  );
};

/** Do a deed in the model: the refusal's code, or null when it was done. */
export function doInModel(bottle: ModelBottle, one: Deed, linesSeen: number): string | null {
  switch (one.kind) {
    case 'draw': {
      if (one.amount > Math.min(...heldFrom(bottle, one.hour))) return 'not-enough-stock';
      const on = dayAt(one.hour);
      if (bottle.openedOn === null || on < bottle.openedOn) bottle.openedOn = on;
      return add(bottle, one.hour, -one.amount, 'drawn');
    }
    case 'discard':
      if (one.amount > Math.min(...heldFrom(bottle, one.hour))) return 'not-enough-stock';
      return add(bottle, one.hour, -one.amount, 'discarded');
    case 'discard-all': {
      const all = Math.min(...heldFrom(bottle, one.hour));
      return all === 0 ? 'nothing-left' : add(bottle, one.hour, -all, 'discarded');
    }
    case 'count':
      return one.looks && linesSeen !== bottle.lines.length ? 'ledger-moved' : countInModel(bottle, one);
    case 'reverse':
      return reverseInModel(bottle, one.line);
    case 'open':
      if (bottle.openedOn !== null) return 'already-opened';
      if (one.day < RECEIVED_ON) return 'before-received';
      if (one.day > TODAY) return 'faults';
      bottle.openedOn = one.day;
      return null;
    case 'shut':
      if (bottle.openedOn === null) return 'not-opened';
      if (bottle.lines.some(({ kind, back }) => kind === 'drawn' && back === null)) return 'drawn-since-opened';
      bottle.openedOn = null;
      return null;
    case 'move':
      bottle.keptIn = one.to;
      return null;
    case 'date':
      bottle.expiresOn = one.day;
      return null;
  }
}

function countInModel(bottle: ModelBottle, one: Extract<Deed, { kind: 'count' }>): string | null {
  const held = heldFrom(bottle, one.hour);
  const change = one.amount - (held[0] ?? 0);
  if (change > 0 && Math.max(...held) + change > SIZE) return 'more-than-it-holds';
  if (change < 0 && Math.min(...held) + change < 0) return 'not-enough-stock';
  if (change === 0) return null;
  if (!one.says && Math.abs(change) > SIZE / 20) return 'faults';
  return add(bottle, one.hour, change, 'counted');
}

function reverseInModel(bottle: ModelBottle, which: number): string | null {
  const line = bottle.lines[which % bottle.lines.length];
  if (!line || line.isBack || line.back !== null) return 'already-reversed';
  const back: Line = { at: line.at, change: -line.change, kind: 'reversed', back: null, isBack: true };
  if (!isPossible([...bottle.lines, back])) return 'others-stand-on-it';
  bottle.lines.push(back);
  line.back = back;
  return null;
}

function add(bottle: ModelBottle, at: number, change: number, kind: string): null {
  bottle.lines.push({ at, change, kind, back: null, isBack: false });
  return null;
}
