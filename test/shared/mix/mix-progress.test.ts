import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FinishMixBody } from '@/shared/api/finish-mix-body';
import { sureHeaders } from '@/shared/forms/earlier-asked';
import { finishBodyOf, leftOutKey } from '@/shared/mix/finish-body';
import { afterwards, type MixAction } from '@/shared/mix/mix-action';
import { readProgress } from '@/shared/mix/mix-progress';
import { keyBeside, screenAt, screensOf } from '@/shared/mix/mix-screens';
import { pouredInAll, pourFaults } from '@/shared/mix/poured-so-far';
import { after, begun, bodyOf, FAR, ID, OIL_1, OIL_2, PLAN, poured, TIMES } from './a-plan';

test('a mix poured as planned draws the sum of its fills, one bottle after the other, and its body is what the shop takes', () => {
  const body = bodyOf(after(begun(), ...poured(0), ...poured(1), ...poured(2), ...TIMES));
  expect(body).toMatchObject({
    ...{
      commandId: ID,
      shop: 's',
      recipe: 'r',
      planned: { program: 'g', on: '2026-03-31' },
      benches: ['b'],
      by: 'Ada',
    },
    ...{ startedAt: '2026-03-31T17:40:20-04:00', endedAt: '2026-03-31T18:20:00-04:00', sprayed: '6000 mL' },
    poured: [
      {
        product: 'oil',
        from: [
          { ...OIL_1, amount: '50 mL', heldMore: false },
          { ...OIL_2, amount: '70 mL', heldMore: false },
        ],
        elsewhere: null,
      },
      { product: 'salt', from: [{ lotId: 'p', place: 0, amount: '15 g' }], elsewhere: null },
    ],
    ...{ leftover: null, pH: null, acid: null, passed: [], plannedCost: '1.5' },
  });
  expect(FinishMixBody.safeParse(body).error).toBeUndefined();
});

test('what was poured otherwise is recorded as it was: another bottle, another amount, none at all, one more product', () => {
  const part = (bottle: typeof OIL_1 | null, amount: string, heldMore = false) => ({ bottle, amount, heldMore });
  const changed = after(
    begun(),
    { do: 'choose', product: 'oil', bottle: OIL_2 },
    ...poured(0),
    { do: 'change', fill: 1, product: 'oil', parts: [part(OIL_1, '55 mL', true), part(null, '1.5 mL')] },
    { do: 'poured', fill: 1, product: 'oil' },
    { do: 'left-out', fill: 1, product: 'salt' },
    { do: 'add', fill: 1, product: 'soap' },
    { do: 'change', fill: 1, product: 'soap', parts: [part(null, '3 mL')] },
    { do: 'poured', fill: 1, product: 'soap' },
    { do: 'no-more', fill: 1 },
    ...TIMES,
  );
  expect(bodyOf(changed)).toMatchObject({
    sprayed: '4000 mL',
    poured: [
      {
        from: [
          { ...OIL_2, amount: '40 mL', heldMore: false },
          { ...OIL_1, amount: '55 mL', heldMore: true },
        ],
        elsewhere: '1.5 mL',
      },
      { product: 'salt', from: [{ amount: '5 g' }] },
      { product: 'soap', from: [], elsewhere: '3 mL' },
    ],
  });
});

test('acid goes in as two parts, and the last reading of the meter is kept with it', () => {
  const acid = (fill: number, first: string, more: string): MixAction => ({
    do: 'acid',
    pour: { fill, product: 'acid', first, more },
  });
  const mixed = after(
    begun(),
    ...poured(0),
    acid(0, '2 mL', '0.4 mL'),
    { do: 'reading', fill: 0, pH: '6.1' },
    { do: 'same-again', fill: 0 },
    ...TIMES,
  );
  const body = bodyOf(mixed);
  expect(body).toMatchObject({ pH: 6.1, acid: 'acid' });
  expect(body.poured.at(-1)).toMatchObject({ product: 'acid', from: [{ lotId: 'a', amount: '7.2 mL' }] });
  const wrong = finishBodyOf(after(mixed, { do: 'reading', fill: 2, pH: '15' }, acid(1, 'some', '')));
  expect(wrong).toMatchObject({ faults: [{ screen: 'acid 1' }, { screen: 'meter 2' }] });
});

test('a time that comes twice is the one at which it was tapped, unless somebody types another', () => {
  const until = Date.UTC(2026, 10, 1, 6, 30);
  const mixed = after(begun(), ...poured(0), { do: 'spraying', since: until - 900_000 }, { do: 'sprayed', until });
  expect(mixed.answers.endedAt).toBe('2026-11-01T01:30');
  expect(bodyOf(mixed).endedAt).toBe('2026-11-01T01:30:00-05:00');
  const typed = after(mixed, { do: 'answer', field: 'endedAt', text: '2026-11-01T02:15' });
  expect(bodyOf(typed).endedAt).toBe('2026-11-01T02:15:00-05:00');
  // The latest end counts: of what was typed and what was tapped, and never an earlier tap.
  expect(bodyOf(after(typed, { do: 'sprayed', until: until + 60_000 })).endedAt).toBe('2026-11-01T02:15:00-05:00');
  expect(bodyOf(after(typed, { do: 'sprayed', until: until + 7_200_000 })).endedAt).toBe('2026-11-01T03:30:00-05:00');
  expect(after(mixed, { do: 'sprayed', until: until - 1 })).toBe(mixed);
});

test('nothing is finished that nobody said: a pour that is open, a time, a reason, where the leftover went', () => {
  const stops = [{ rule: 'bench-closed', messages: ['Bench is closed.'] }];
  const open = after(
    begun({ ...PLAN, stops }),
    { do: 'poured', fill: 0, product: 'oil' },
    {
      do: 'answer',
      field: 'leftover',
      text: '100 mL',
    },
  );
  const finishing = finishBodyOf(open);
  expect(finishing.ok ? [] : finishing.faults.map(({ path, screen }) => [path, screen])).toEqual([
    ['poured.salt', 'pour 0 salt'],
    ['startedAt', 'finish'],
    ['endedAt', 'finish'],
    ['leftoverWent', 'finish'],
    ['passed.bench-closed', 'finish'],
  ]);
});

test('a bench that took what was left over is sprayed, and closes with the others', () => {
  const mixed = after(begun(), ...poured(0), { do: 'no-more', fill: 0 }, ...TIMES, {
    do: 'leftover-benches',
    ids: ['c'],
  });
  expect(bodyOf(mixed)).toMatchObject({ benches: ['b'], leftover: null, leftoverWent: null });
  expect(bodyOf(after(mixed, { do: 'answer', field: 'leftover', text: '100 mL' }))).toMatchObject({
    ...{ benches: ['b', 'c'], leftover: '100 mL', leftoverWent: 'sprayed on Ferns' },
  });
});

test('more than the books have in a bottle is asked about, but for one that held more', () => {
  const parts = [{ bottle: OIL_1, amount: '51 mL', heldMore: false }];
  expect(pourFaults(begun(), 0, 'oil', parts)).toMatchObject([{ kind: 'over-books' }]);
  expect(pourFaults(begun(), 0, 'oil', [{ bottle: OIL_1, amount: '51 mL', heldMore: true }])).toEqual([]);
  const later = after(begun(), { do: 'poured', fill: 0, product: 'oil' });
  expect(pourFaults(later, 1, 'oil', [{ bottle: OIL_1, amount: '10.001 mL', heldMore: false }])).toHaveLength(1);
  expect(pourFaults(later, 1, 'oil', [{ bottle: OIL_1, amount: '10 mL', heldMore: false }])).toEqual([]);
});

test('while it waits to be sent nothing changes; refused, it is at the end again with what is asked; once sent, it is over', () => {
  const waiting = after(begun(), ...poured(0), { do: 'finish' });
  expect(after(waiting, { do: 'poured', fill: 1, product: 'oil' }, { do: 'go', to: 'wear' })).toBe(waiting);
  const faults = [{ path: 'passed.too-soon', message: 'Too soon.' }];
  const refused = after(waiting, { do: 'refused', code: 'faults', message: 'No.', faults });
  expect(refused).toMatchObject({ state: 'mixing', at: 'finish', commandId: ID, refusal: { message: 'No.' } });
  expect(refused.asked).toEqual([{ rule: 'too-soon', messages: ['Too soon.'] }]);
  const sent = after(refused, { do: 'finish' }, { do: 'sent', application: 'x' });
  expect(
    after(sent, { do: 'finish' }, { do: 'refused', code: null, message: 'late', faults: [] }, { do: 'correct' }),
  ).toBe(sent);
});

const screens = screensOf(begun()).map(({ key }) => key);
const fill = fc.nat({ max: 2 });
const product = fc.constantFrom('oil', 'salt', 'soap');
const parts = fc.array(
  fc.record({
    bottle: fc.constantFrom(OIL_1, OIL_2, null),
    amount: fc.constantFrom('4 mL', '1 tsp', '33.333 mL', '0.001 mL', 'some'),
    heldMore: fc.boolean(),
  }),
  { maxLength: 3 },
);
const plan = fc.constantFrom(PLAN, FAR, { ...PLAN, ownAcid: 'salt' });
const action: fc.Arbitrary<MixAction> = fc.oneof(
  fc.record({ do: fc.constant('go' as const), to: fc.constantFrom(...screens) }),
  fc.record({ do: fc.constantFrom('next' as const, 'back' as const), from: fc.constantFrom(...screens) }),
  fc.record({ do: fc.constant('tick' as const), what: fc.constantFrom('x', 'y'), on: fc.boolean() }),
  fc.record({ do: fc.constantFrom('poured' as const, 'left-out' as const, 'as-planned' as const), fill, product }),
  fc.record({ do: fc.constant('change' as const), fill, product: fc.constant('oil'), parts }),
  fc.record({
    do: fc.constantFrom('add' as const, 'take-back' as const),
    fill: fc.constant(0),
    product: fc.constant('soap'),
  }),
  fc.record({ do: fc.constant('choose' as const), product: fc.constant('oil'), bottle: fc.constantFrom(OIL_1, OIL_2) }),
  fc.record({ do: fc.constant('reading' as const), fill, pH: fc.constantFrom('6.1', '', '7') }),
  fc.record({ do: fc.constantFrom('same-again' as const, 'no-more' as const), fill }),
  fc.record({
    do: fc.constant('reason' as const),
    rule: fc.constant(leftOutKey('salt')),
    text: fc.constantFrom('', 'no scale'),
  }),
  fc.record({
    do: fc.constant('acid' as const),
    pour: fc.record({
      fill,
      product: fc.constant('acid'),
      first: fc.constantFrom('2 mL', ''),
      more: fc.constant('0.5 mL'),
    }),
  }),
  fc.constant<MixAction>({ do: 'all-fills' }),
  fc.constantFrom(...TIMES),
);

test('a mix interrupted at any step loses nothing and doubles nothing', () => {
  fc.assert(
    fc.property(
      fc.array(action, { maxLength: 40 }),
      fc.array(fc.boolean(), { maxLength: 40 }),
      plan,
      (actions, breaks, its) => {
        const straight = after(begun(its), ...actions);
        let interrupted = begun(its);
        actions.forEach((one, at) => {
          interrupted = afterwards(interrupted, one);
          // Locked, thrown out of memory and taken up again; and a tap that came twice.
          if (breaks[at]) interrupted = readProgress(JSON.stringify(interrupted)) ?? begun(its);
          if (breaks[at] && one.do !== 'same-again') interrupted = afterwards(interrupted, one);
        });
        expect(finishBodyOf(interrupted)).toEqual(finishBodyOf(straight));
        // Whatever still stands in the way of the record, what is in the tank is the same.
        expect(pouredInAll(interrupted, 3)).toEqual(pouredInAll(straight, 3));
        expect(screensOf(interrupted)).toContainEqual(screenAt(interrupted));
      },
    ),
    { numRuns: 300 },
  );
});

test('however a pour was shared over bottles and fills, the body has the sum of what was typed, to the µL', () => {
  const amounts = fc.array(fc.integer({ min: 1, max: 400_000 }), { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(fc.array(amounts, { minLength: 3, maxLength: 3 }), (fills) => {
      let progress = begun();
      for (const [at, all] of fills.entries()) {
        const split = all.map((amount, bottle) => ({
          ...{ bottle: [OIL_1, OIL_2, null][bottle % 3] ?? null, amount: `${amount / 1000} mL`, heldMore: true },
        }));
        progress = after(progress, { do: 'change', fill: at, product: 'oil', parts: split });
        progress = after(
          progress,
          { do: 'poured', fill: at, product: 'oil' },
          { do: 'left-out', fill: at, product: 'salt' },
        );
      }
      const finishing = finishBodyOf(after(progress, ...TIMES));
      const isTwice = fills.some((all) => all.length > 3);
      expect(finishing.ok).toBe(!isTwice || fills.every((all) => all.length <= 3));
      if (!finishing.ok) return;
      const [line] = finishing.body.poured;
      const texts = [...(line?.from ?? []).map(({ amount }) => amount), line?.elsewhere ?? '0 mL'];
      const sum = texts.reduce((total, text) => total + Math.round(Number(text.replace(' mL', '')) * 1000), 0);
      expect(sum).toBe(fills.flat().reduce((total, amount) => total + amount, 0));
    }),
    { numRuns: 200 },
  );
});

test('every screen is reached by going on, and back again', () => {
  let progress = begun({ ...PLAN, stops: [{ rule: 'too-soon', messages: ['Too soon.'] }] });
  const seen = [progress.at];
  for (let from = ''; from !== progress.at; ) {
    from = progress.at;
    progress = afterwards(progress, { do: 'next', from });
    if (progress.at !== from) seen.push(progress.at);
  }
  expect(seen).toEqual(screensOf(progress).map(({ key }) => key));
  expect(afterwards(progress, { do: 'next', from: 'wear' })).toBe(progress);
  expect(keyBeside(progress, -1)).toBe(seen.at(-2));
});

test('what is no mix of this form is not taken up', () => {
  for (const kept of ['', '{', 'null', '{"version":2}', JSON.stringify({ ...begun(), commandId: 'x' })]) {
    expect(readProgress(kept)).toBeNull();
  }
});

test('a mix that would open a bench earlier waits with all that was typed, and goes again with the answer', () => {
  const sent = after(begun(), ...poured(0), ...poured(1), ...poured(2), ...TIMES, { do: 'finish' });
  const asked = afterwards(sent, {
    ...{ do: 'refused', code: 'opens-earlier', message: 'A bench would open earlier.', confirm: 'token' },
    faults: [{ path: 'benches', message: 'Bench b: open at once.' }],
  });
  expect(asked).toMatchObject({ state: 'mixing', at: 'finish', refusal: { confirm: 'token' }, sure: null });
  expect(sureHeaders(asked.sure)).toEqual({});
  const kept = readProgress(JSON.stringify(asked)) ?? begun();
  const sure = afterwards(kept, { do: 'sure', token: 'token', reason: 'asked Ada, ü' });
  expect(sure).toMatchObject({ state: 'to-send', refusal: null });
  expect(sureHeaders(sure.sure)).toEqual({
    'x-confirm-opening': 'token',
    'x-confirm-reason': 'asked%20Ada%2C%20%C3%BC',
  });
  expect(bodyOf(sure)).toEqual(bodyOf(sent));
  // Asked about other benches, it is to be answered anew.
  const again = afterwards(sure, { do: 'refused', code: 'opens-earlier', message: '', faults: [], confirm: 'other' });
  expect(again).toMatchObject({ refusal: { confirm: 'other' }, sure: null });
});
