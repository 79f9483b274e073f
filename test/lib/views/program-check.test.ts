import { expect, test } from 'vitest';
import { programCheck } from '@/lib/views/program-check';
import { draftOfProgram, type ProgramDraft } from '@/shared/forms/program';
import { SMALL, smallShop } from '../commands/small-shop';
import { CLOCK } from '../data/fresh-database';

/** Open every Tuesday from 9 to 18; soap keeps people out for 12 and a half hours. */
const openOnTuesdays = () =>
  smallShop({
    ...SMALL,
    shop: { ...SMALL.shop, openingHours: { ...SMALL.shop.openingHours, tue: [['09:00', '18:00']] } },
  });

const draft: ProgramDraft = {
  ...draftOfProgram(null, '2026-04-07'),
  ...{
    recipes: ['r'],
    benches: ['b'],
    startTime: '16:00',
    minutes: '30',
    kind: 'weeks',
    weekdays: ['tue'],
    everyWeeks: '1',
  },
};

async function checked(change: Partial<ProgramDraft>, id = '') {
  const outcome = await programCheck(await openOnTuesdays(), id, { ...draft, ...change }, CLOCK);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}

test('a program that is typed into opening hours is told so, with the starts that clear it', async () => {
  const check = await checked({});
  expect(check.isReadable).toBe(true);
  expect(check.flags.map(({ flag: { rule }, more }) => ({ rule, more }))).toContainEqual({
    rule: 'closed-in-opening-hours',
    more: 6,
  });
  expect(check.starts.map(({ at }) => at)).toEqual([null, '18:00', null]);
  const clear = await checked({ startTime: '18:00' });
  expect(clear.flags.filter(({ flag }) => flag.rule === 'closed-in-opening-hours')).toEqual([]);
  expect(clear.starts).toEqual([]);
});

test.each([
  { why: 'no recipe yet', change: { recipes: [''] } },
  { why: 'no bench yet', change: { benches: [] } },
  { why: 'half a time', change: { startTime: '1' } },
  { why: 'a day that is none', change: { startsOn: '2026-02-31' } },
  { why: 'a bench that is not there', change: { benches: ['zz'] } },
])('what is typed with $why is no program, and nothing breaks', async ({ change }) => {
  expect(await checked(change)).toEqual({ isReadable: false, flags: [], starts: [] });
});

test('a program that is changed is checked instead of the one that stands', async () => {
  const check = await checked({ startTime: '16:00', startsOn: '2026-03-03', kind: 'once' }, 'g');
  expect(check).toMatchObject({ isReadable: true, flags: [] });
});
