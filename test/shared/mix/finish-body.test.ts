import { expect, test } from 'vitest';
import { FinishMixBody } from '@/shared/api/finish-mix-body';
import { finishBodyOf, LONGEST_LEFT_OUT, leftOutKey } from '@/shared/mix/finish-body';
import type { MixAction } from '@/shared/mix/mix-action';
import type { MixPlan } from '@/shared/mix/mix-plan';
import { type MixProgress, readProgress } from '@/shared/mix/mix-progress';
import { partsExactly } from '@/shared/mix/poured-so-far';
import { Day } from '@/shared/time/day';
import { after, begun, bodyOf, FAR, PLAN, poured, TIMES } from './a-plan';

test('what nothing measures is not poured as the sheet has it: somebody says how much it was, or why it was left out', () => {
  const salt = { fill: 0, product: 'salt' };
  const mixed = after(begun(FAR), ...poured(0), { do: 'no-more', fill: 0 }, ...TIMES);
  const faultsOf = (progress: MixProgress) => {
    const finishing = finishBodyOf(progress);
    return finishing.ok ? [] : finishing.faults.map(({ screen, message }) => [screen, message]);
  };
  expect(faultsOf(mixed)).toEqual([['pour 0 salt', 'salt, fill 1: neither poured nor left out. Say which.']]);
  const parts = partsExactly(mixed, 0, 'salt');
  expect(bodyOf(after(mixed, { do: 'change', ...salt, parts }, { do: 'poured', ...salt })).poured).toMatchObject([
    { product: 'oil' },
    { product: 'salt', from: [{ amount: '5 g' }] },
  ]);
  const out = after(mixed, { do: 'left-out', ...salt });
  expect(faultsOf(out)).toEqual([['pour 0 salt', 'salt, fill 1: write why it was left out.']]);
  const why = after(out, { do: 'reason', rule: leftOutKey('salt'), text: ' no scale ' });
  expect(bodyOf(why)).toMatchObject({
    poured: [{ product: 'oil' }],
    passed: [{ rule: 'left-out', reason: 'salt: no scale' }],
  });
  // Whatever can be measured is left out without a word.
  expect(
    bodyOf(
      after(
        mixed,
        { do: 'left-out', fill: 0, product: 'oil' },
        { do: 'change', ...salt, parts },
        { do: 'poured', ...salt },
      ),
    ).passed,
  ).toEqual([]);
});

test('the longest reason for leaving out the product with the longest name still fits into a record', () => {
  const products = FAR.products.map((one) => (one.id === 'salt' ? { ...one, name: 'n'.repeat(200) } : one));
  const body = bodyOf(
    after(
      begun({ ...FAR, products }),
      ...poured(0),
      { do: 'no-more', fill: 0 },
      ...TIMES,
      { do: 'left-out', fill: 0, product: 'salt' },
      { do: 'reason', rule: leftOutKey('salt'), text: 'y'.repeat(LONGEST_LEFT_OUT) },
    ),
  );
  expect(FinishMixBody.shape.passed.safeParse(body.passed).success).toBe(true);
});

test('a pH says nothing of an acid where another was in the tank already', () => {
  const own = { ...PLAN, ownAcid: 'salt' };
  const mixed = (plan: MixPlan, ...more: MixAction[]) =>
    bodyOf(after(begun(plan), ...poured(0), { do: 'no-more', fill: 0 }, ...TIMES, ...more)).acid;
  const acid: MixAction = { do: 'acid', pour: { fill: 0, product: 'acid', first: '2 mL', more: '' } };
  const salt: MixAction = { do: 'acid', pour: { fill: 0, product: 'salt', first: '1 g', more: '' } };
  expect(mixed(PLAN, acid)).toBe('acid');
  expect(mixed(own)).toBe('salt');
  expect(mixed(own, salt)).toBe('salt');
  expect(mixed(own, acid)).toBeNull();
});

test('how warm it was goes along in °C where somebody says so, and what is no temperature is asked for again', () => {
  const warm = (text: string) =>
    after(begun(), ...poured(0), { do: 'no-more', fill: 0 }, ...TIMES, { do: 'answer', field: 'temperature', text });
  // The plan is of a shop with US units, where a number without a letter is in °F.
  expect(['', '18.5 C', '86'].map((text) => bodyOf(warm(text)).temperatureC)).toEqual([null, 18.5, 30]);
  expect(FinishMixBody.shape.temperatureC.safeParse(bodyOf(warm('158 F')).temperatureC).success).toBe(true);
  const finishing = finishBodyOf(warm('195'));
  expect(finishing.ok ? [] : finishing.faults).toEqual([
    { path: 'temperature', screen: 'finish', message: expect.stringContaining('is not between') },
  ]);
});

test('a mix that was kept before these were thought of is still understood', () => {
  const kept = JSON.parse(JSON.stringify(begun()));
  for (const pour of kept.plan.pours) delete pour.farOff;
  delete kept.plan.pH.own;
  delete kept.plan.pH.unreckoned;
  delete kept.answers.temperature;
  delete kept.plan.near;
  for (const pour of kept.plan.pours) delete pour.most;
  delete kept.told;
  delete kept.turn;
  expect(readProgress(JSON.stringify(kept))).toEqual(begun());
  kept.refusal = { message: 'No.', faults: [] };
  expect(readProgress(JSON.stringify(kept))?.refusal).toEqual({
    code: null,
    message: 'No.',
    faults: [],
    confirm: null,
  });
});

test('a mix begun without a planned spraying was the one that somebody names at the end, or none', () => {
  const turn = { program: 'g', on: Day.parse('2026-03-31') };
  const mixed = (...more: MixAction[]) => {
    const begunFree = { ...begun(), plan: { ...begun().plan, planned: null, near: [{ ...turn, text: '6 pm' }] } };
    return bodyOf(after(begunFree, ...poured(0), { do: 'no-more', fill: 0 }, ...TIMES, ...more)).planned;
  };
  expect(mixed()).toBeNull();
  expect(mixed({ do: 'turn', turn })).toEqual(turn);
  expect(mixed({ do: 'turn', turn }, { do: 'turn', turn: null })).toBeNull();
});
