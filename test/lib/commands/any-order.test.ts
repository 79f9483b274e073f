import fc from 'fast-check';
import { expect, test } from 'vitest';
import { correctLastDay } from '@/lib/commands/correct-last-day';
import { countContainer } from '@/lib/commands/count-container';
import { discardStock } from '@/lib/commands/discard-stock';
import { drawStock } from '@/lib/commands/draw-stock';
import { moveContainer } from '@/lib/commands/move-container';
import { openContainer } from '@/lib/commands/open-container';
import { receiveLot } from '@/lib/commands/receive-lot';
import { reverseMovement } from '@/lib/commands/reverse-movement';
import { shutContainer } from '@/lib/commands/shut-container';
import { database } from '@/lib/data/database';
import { movementOf } from '@/lib/data/movements';
import { newId } from '@/lib/data/new-id';
import { shopFileOf } from '@/lib/data/snapshot';
import { account } from '@/lib/engine/ledger/account';
import type { Movement } from '@/lib/engine/ledger/movement';
import type { Outcome } from '@/shared/outcome';
import { micros, stock } from '@/shared/quantity/amounts';
import { Day } from '@/shared/time/day';
import { figure } from '@/test/promises/figure';
import { runs } from '@/test/runs';
import { CLOCK } from '../data/fresh-database';
import { type Deed, deed, doInModel, type ModelBottle, newModel, SIZE } from './ledger-model';
import { smallShop, today } from './small-shop';

/** How many sequences are tried: few in every run, many in a long one. */
const SEQUENCES = runs(120, 10_000);

const BOTTLES = 2;
const PRICES = [0, 1, 9_999_999, 74_000_001, 100_000_000];

/** What one of two clients sends at some moment: which bottle, what, and whether it sends it a second time at the end. */
const sent = fc.record({ place: fc.nat(BOTTLES - 1), deed, isRepeated: fc.nat(3).map((n) => n === 0) });
/** At each moment one client sends something, or both do at once. */
const sequence = fc.record({
  paid: fc.constantFrom(...PRICES),
  moments: fc.array(fc.array(sent, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 4 }),
});
type Sent = typeof sent extends fc.Arbitrary<infer T> ? T : never;

type Lot = { shopId: string; lotId: string };

async function newLot(shopId: string, paid: number): Promise<Lot> {
  const lot = { product: 'p', pack: '500 mL', count: BOTTLES, expiresOn: null, keptIn: null };
  const receivedOn = Day.parse('2026-03-30');
  const outcome = await receiveLot({ commandId: newId(), shopId, ...lot, receivedOn, paid: micros(paid) }, CLOCK);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return { shopId, lotId: outcome.value.lot };
}

type Seen = { lines: string[] };

function send(lot: Lot, { place, deed: one }: Sent, commandId: string, { lines }: Seen): Promise<Outcome<object>> {
  const at = { ...lot, place, commandId };
  const millilitres = stock('amount' in one ? one.amount * 1_000 : 0);
  const hour = today('hour' in one ? one.hour : 1);
  switch (one.kind) {
    case 'draw':
      return drawStock({ ...at, amount: millilitres, drawnAt: hour }, CLOCK);
    case 'discard':
      return discardStock(
        { ...at, amount: millilitres, discardedAt: hour, reason: 'spoiled', returned: one.back },
        CLOCK,
      );
    case 'discard-all':
      return discardStock({ ...at, amount: null, discardedAt: hour, reason: 'spoiled' }, CLOCK);
    case 'count': {
      const counted = { found: millilitres, countedAt: hour, reason: one.says ? 'spilled' : null };
      return countContainer({ ...at, ...counted, seen: one.looks ? lines.length : undefined }, CLOCK);
    }
    case 'reverse': {
      const movement = lines[one.line % lines.length] ?? '';
      return reverseMovement({ commandId, shopId: lot.shopId, movement, reason: 'wrong bottle' }, CLOCK);
    }
    case 'open':
      return openContainer({ ...at, openedOn: Day.parse(one.day) }, CLOCK);
    case 'shut':
      return shutContainer({ ...at, reason: 'another bottle' }, CLOCK);
    case 'move':
      return moveContainer({ ...at, keptIn: one.to }, CLOCK);
    case 'date':
      return correctLastDay({ ...at, expiresOn: Day.parse(one.day), reason: 'misread' }, CLOCK);
  }
}

/** A bottle as the model has it, and the ids of its lines as the commands answered them. */
type Known = { model: ModelBottle; lines: string[] };

/** A line that a client had before its eyes is named by its place in the list it saw, also in the model. */
const asSeen = (one: Deed, seen: number): Deed => (one.kind === 'reverse' ? { ...one, line: one.line % seen } : one);

/** What one or two clients send at once: each is answered as the model answers, in the order in which they were sent. */
async function doMoment(lot: Lot, bottles: Known[], moment: Sent[]): Promise<void> {
  const seen = bottles.map(({ lines }) => ({ lines: [...lines] }));
  const own = moment.map((one) => ({ ...one, id: newId() }));
  const sends = [...own, ...own.filter(({ isRepeated }) => isRepeated)];
  const given = await Promise.all(sends.map((one) => send(lot, one, one.id, seen[one.place] ?? { lines: [] })));
  const done = new Map<string, unknown>();
  for (const [number, { id, place, deed: one }] of sends.entries()) {
    const [answer, bottle] = [given[number], bottles[place]];
    if (!answer || !bottle) throw new Error('nothing was answered');
    if (done.has(id)) {
      expect(answer).toEqual(done.get(id));
      continue;
    }
    const before = seen[place]?.lines.length ?? 0;
    const refusal = doInModel(bottle.model, asSeen(one, before), before);
    expect(answer.ok ? null : answer.refusal.code).toBe(refusal);
    if (!answer.ok) continue;
    done.set(id, answer);
    const { movement }: { movement?: string | null } = answer.value;
    if (typeof movement === 'string') bottle.lines.push(movement);
  }
}

/** What the books hold of a lot, bottle by bottle. */
async function booksOf(lot: Lot) {
  const { reader } = await database();
  const movements = await reader.movement.findMany({ where: lot, orderBy: { number: 'asc' } });
  const changes = await reader.containerChange.findMany({ where: lot, orderBy: { number: 'asc' } });
  const rows = await reader.container.findMany({ where: lot, orderBy: { place: 'asc' } });
  return rows.map((row, place) => ({
    row,
    movements: movements.filter((one) => one.place === place).map(movementOf),
    changes: changes.filter((one) => one.place === place),
  }));
}
type Books = Awaited<ReturnType<typeof booksOf>>[number];

const total = (movements: Movement[]): number => amountsOf(movements).reduce((sum, one) => sum + one, 0);

const amountsOf = (movements: Movement[]): number[] =>
  movements.map(({ from, amount }) => (from === 'container' ? -amount : amount) / 1_000);

/** The bottle is what the model says, at every instant between nothing and everything, and its price is all accounted for. */
function check({ movements, changes, row }: Books, { model, lines }: Known): void {
  expect(movements.map(({ id }) => id)).toEqual(lines);
  expect(amountsOf(movements)).toEqual(model.lines.map(({ change }) => change));
  let held = 0;
  for (const amount of amountsOf(movements.toSorted((a, b) => a.occurredAt - b.occurredAt))) {
    held += amount;
    expect(held >= 0 && held <= SIZE).toBe(true);
  }
  const paid = micros(Number(row.paid));
  const { sides, left } = account(paid, stock(SIZE * 1_000), movements);
  expect(Object.values(sides).reduce((sum, { out, back }) => sum + out - back, 0) + left).toBe(paid);
  // What the history of openings, moves and days comes to is what the bottle's row says.
  const last = (kinds: string[]) => changes.findLast(({ kind }) => kinds.includes(kind))?.is ?? null;
  const { openedOn, keptIn, expiresOn } = model;
  expect(row).toMatchObject({ openedOn, keptIn, expiresOn });
  expect([last(['opened', 'shut']), last(['moved']), last(['dated'])]).toEqual([openedOn, keptIn, expiresOn]);
}

test('whatever two people do to their bottles, once or twice and at once, the ledger does what a plain model does, and every micro is accounted for', {
  timeout: 6 * 3_600_000,
}, async () => {
  for (let left = SEQUENCES; left > 0; left -= IN_A_SHOP) await tryInAShop(Math.min(left, IN_A_SHOP));
  figure(5, `${SEQUENCES} sequences as a plain model has them`);
});

/** As many as a shop takes in years; a long run takes several shops. */
const IN_A_SHOP = 500;

async function tryInAShop(sequences: number): Promise<void> {
  const shopId = await smallShop();
  const left = new Map<string, number>();
  await fc.assert(
    fc.asyncProperty(sequence, async ({ paid, moments }) => {
      const lot = await newLot(shopId, paid);
      const received = (await booksOf(lot)).map(({ movements }) => movements.map(({ id }) => id));
      const bottles = received.map((lines): Known => ({ model: newModel(), lines }));
      for (const moment of moments) await doMoment(lot, bottles, moment);
      for (const [place, books] of (await booksOf(lot)).entries()) {
        const known = bottles[place];
        if (!known) throw new Error('there is a bottle too many');
        check(books, known);
        left.set(`${lot.lotId} ${place}`, total(books.movements));
      }
    }),
    { numRuns: sequences },
  );
  // And the shop as a whole tells of as much as all the bottles together.
  const { lots } = await shopFileOf(shopId);
  const told = lots
    .filter(({ id }) => id !== 'l' && !/^m(~|$)/.test(id))
    .reduce((sum, { count, remaining }) => sum + count * Number.parseFloat(remaining ?? `${SIZE}`), 0);
  expect(told).toBe([...left.values()].reduce((sum, one) => sum + one, 0));
}

test('when one draws 50 times while another counts 50 times, every draw stays and the last count is right', {
  timeout: 120_000,
}, async () => {
  const shopId = await smallShop();
  const lot = await newLot(shopId, 74_000_001);
  const at = { ...lot, place: 0 };
  const drawing = async () => {
    for (let times = 0; times < 50; times += 1) {
      const drawn = await drawStock({ ...at, commandId: newId(), amount: stock(3_000), drawnAt: null }, CLOCK);
      expect(drawn.ok).toBe(true);
    }
  };
  let askedAgain = 0;
  const counting = async () => {
    for (let times = 0; times < 50; ) {
      // The person looks at what the ledger says and sees a little less; when somebody drew meanwhile, looks again.
      const told = (await booksOf(lot))[0]?.movements ?? [];
      const held = total(told);
      const counted = { found: stock((held - 1) * 1_000), countedAt: null, reason: null, seen: told.length };
      const outcome = await countContainer({ ...at, commandId: newId(), ...counted }, CLOCK);
      if (outcome.ok) times += 1;
      else expect(outcome.refusal.code).toBe('ledger-moved');
      askedAgain += outcome.ok ? 0 : 1;
    }
  };
  await Promise.all([drawing(), counting()]);
  expect(askedAgain).toBeGreaterThan(0);
  const lines = amountsOf((await booksOf(lot))[0]?.movements ?? []);
  expect(lines.filter((amount) => amount === -3)).toHaveLength(50);
  expect(lines.filter((amount) => amount === -1)).toHaveLength(50);
  expect(lines.reduce((sum, one) => sum + one, 0)).toBe(SIZE - 50 * 3 - 50 * 1);
});
