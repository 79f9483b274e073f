import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { benchInFields, benchOfDraft, draftOfBench, fieldOfBenchPath, fieldsOfBench } from '@/shared/forms/bench';
import {
  draftOfProgram,
  fieldOfProgramPath,
  fieldsOfProgram,
  programInFields,
  programOfDraft,
} from '@/shared/forms/program';
import { nextDays, repeatOfText, textOfRepeat } from '@/shared/forms/repeat';
import {
  draftOfSettings,
  fieldOfSettingsPath,
  fieldsOfSettings,
  settingsInFields,
  settingsOfDraft,
} from '@/shared/forms/shop-settings';
import { draftOfTools, fieldOfToolsPath, fieldsOfTools, toolsInFields, toolsOfDraft } from '@/shared/forms/tools';
import type { ShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { readZone, type Zone } from '@/shared/time/zone';
import { anyShopFile } from '../../lib/data/any-shop-file';

const TODAY = Day.parse('2026-03-03');
const demo = demoShop(TODAY);

function zone(name: string): Zone {
  const reading = readZone(name);
  if (!reading.ok) throw new Error(reading.message);
  return reading.value;
}

test('a bench or a program that goes into its form and comes back unchanged is the same', () => {
  fc.assert(
    fc.property(anyShopFile, ({ benches, programs }) => {
      for (const bench of benches) {
        const back = benchInFields(fieldsOfBench(draftOfBench(bench)));
        expect(benchOfDraft(bench.id, back)).toEqual({ bench, faults: [] });
      }
      for (const program of programs) {
        const back = programInFields(fieldsOfProgram(draftOfProgram(program, TODAY)));
        expect(programOfDraft(program.id, back, program)).toEqual({ program, faults: [] });
      }
    }),
    { numRuns: 15 },
  );
});

test('a shop whose settings go into their forms and come back unchanged is the same shop', () => {
  const check = ({ shop }: ShopFile) => {
    const settings = settingsOfDraft(settingsInFields(fieldsOfSettings(draftOfSettings(shop))));
    const tools = toolsOfDraft(toolsInFields(fieldsOfTools(draftOfTools(shop))));
    expect([settings.faults, tools.faults]).toEqual([[], []]);
    const { sprayers, ...rest } = tools.shop;
    expect({ ...shop, ...settings.shop, ...rest }).toEqual(shop);
    if (shop.sprayers.length > 0) expect(sprayers).toEqual(shop.sprayers);
    else expect(sprayers).toEqual([expect.objectContaining({ capacity: shop.fillCapacity })]);
  };
  check(demo);
  fc.assert(fc.property(anyShopFile, check), { numRuns: 15 });
});

test('a rule is shown as days of the week or as a number of days only where that says the same letter for letter', () => {
  const kindOf = (rule: string | null) => repeatOfText(rule, '2026-03-03').kind;
  expect(kindOf(null)).toBe('once');
  expect(kindOf('FREQ=WEEKLY;BYDAY=TU,FR')).toBe('weeks');
  expect(kindOf('FREQ=WEEKLY;INTERVAL=2;BYDAY=MO')).toBe('weeks');
  expect(kindOf('FREQ=DAILY;INTERVAL=14')).toBe('days');
  for (const rule of ['FREQ=WEEKLY', 'FREQ=WEEKLY;BYDAY=FR,TU', 'FREQ=MONTHLY;BYDAY=1TU', 'FREQ=DAILY;COUNT=3']) {
    expect(kindOf(rule)).toBe('rule');
    expect(textOfRepeat(repeatOfText(rule, '2026-03-03'))).toEqual({ ok: true, value: rule });
  }
});

test('no day of the week, no number of weeks and an unknown rule each say what to write', () => {
  const typed = { weekdays: [], everyWeeks: '0', everyDays: 'x', rule: 'FREQ=YEARLY' };
  for (const [kind, says] of [
    ['weeks', 'Choose at least one day'],
    ['days', 'Write a whole number, 1 or more'],
    ['rule', 'FREQ=MONTHLY;INTERVAL=12'],
  ] as const) {
    expect(textOfRepeat({ ...typed, kind })).toEqual({ ok: false, message: expect.stringContaining(says) });
  }
});

test('the next five days follow what is typed, from today on, and end with the season', () => {
  const typed = {
    ...{ kind: 'weeks', weekdays: ['tue', 'fri'], everyWeeks: '2', everyDays: '', rule: '' },
    ...{ startsOn: '2026-02-03', endsOn: '', startTime: '17:30' },
  };
  const days = (more: object) => {
    const next = nextDays({ ...typed, ...more }, zone('America/New_York'), TODAY, 5);
    return next.ok ? next.value.map(({ day, index }) => `${day} ${index}`) : next.message;
  };
  expect(days({})).toEqual(['2026-03-03 4', '2026-03-06 5', '2026-03-17 6', '2026-03-20 7', '2026-03-31 8']);
  expect(days({ endsOn: '2026-03-17' })).toEqual(['2026-03-03 4', '2026-03-06 5', '2026-03-17 6']);
  expect(days({ kind: 'rule', rule: 'FREQ=MONTHLY;INTERVAL=12' })).toHaveLength(5);
  expect(days({ kind: 'once' })).toEqual([]);
  expect(days({ startsOn: '3 March' })).toContain('is not a date');
});

test('hours are read as people write them, and a wrong one names its own day', () => {
  const typed = draftOfSettings(demo.shop);
  const read = (mon: string) => settingsOfDraft({ ...typed, hours: { ...typed.hours, mon } });
  expect(read('9:00–12:30 and 14:00 to 18:00').shop.openingHours?.mon).toEqual([
    ['09:00', '12:30'],
    ['14:00', '18:00'],
  ]);
  expect(read('mornings').faults).toEqual([{ path: 'open-mon', message: expect.stringContaining('09:00-18:00') }]);
  expect(settingsOfDraft({ ...typed, waterPh: '' }).faults).toEqual([
    { path: 'waterPh', message: expect.stringContaining('both') },
  ]);
});

test('of the months all twelve are written or none, below zero too', () => {
  const typed = draftOfSettings(demo.shop);
  const read = (highs: string[], units = 'metric') => settingsOfDraft({ ...typed, units, highs });
  const year = ['-3.5', '−1', '4', '9', '15', '21', '27', '28', '22', '14', '7', '0'];
  expect(read(year)).toMatchObject({
    faults: [],
    shop: { monthlyHighsC: [-3.5, -1, 4, 9, 15, 21, 27, 28, 22, 14, 7, 0] },
  });
  expect(read(year.map(() => ' '))).toMatchObject({ faults: [], shop: { monthlyHighsC: null } });
  const wrong = (at: number, instead: string) =>
    read(year.map((high, month) => (month === at ? instead : high))).faults;
  expect(wrong(4, '')).toEqual([{ path: 'high-5', message: expect.stringContaining('all twelve') }]);
  expect(wrong(4, '-')).toEqual([{ path: 'high-5', message: expect.stringContaining('no number') }]);
  expect(wrong(11, 'warm')).toEqual([{ path: 'high-12', message: expect.stringContaining('degrees') }]);
});

test('in a US shop a temperature is °F unless its letter says otherwise, and what nobody changed stays what it was', () => {
  const typed = draftOfSettings(demo.shop);
  const high = (text: string, units: string) =>
    settingsOfDraft({ ...typed, units, highs: typed.highs.map(() => text) }).shop.monthlyHighsC?.[0];
  expect([high('68', 'us'), high('20 C', 'us'), high('20', 'metric'), high('68 F', 'metric')]).toEqual([
    20, 20, 20, 20,
  ]);
  for (const units of ['us', 'metric']) {
    // A form that says other units and the same temperatures.
    expect(settingsOfDraft({ ...typed, units }).shop.monthlyHighsC).toEqual(demo.shop.monthlyHighsC);
  }
  const odd = draftOfSettings({ ...demo.shop, oilHotC: 29.55 });
  expect(settingsOfDraft(odd).shop.oilHotC, 'finer than a tenth').toBe(29.55);
});

test('a day of its own is named once, is open after it opens, and is closed when no hours stand there', () => {
  const read = (...specialDays: { on: string; name: string; hours: string }[]) =>
    settingsOfDraft({ ...draftOfSettings(demo.shop), specialDays });
  const fair = { on: '2026-09-05', name: 'Harvest fair', hours: '10:00-16:00' };
  const day = { on: '2026-12-25', name: '', hours: '' };
  expect(read(fair, { on: '', name: '', hours: '' }, day)).toMatchObject({
    faults: [],
    shop: {
      specialDays: [
        { on: '2026-09-05', name: 'Harvest fair', hours: [['10:00', '16:00']] },
        { on: '2026-12-25', name: null, hours: [] },
      ],
    },
  });
  const paths = (...days: (typeof day)[]) => read(...days).faults.map(({ path }) => path);
  expect(paths(fair, { ...day, on: fair.on })).toEqual(['specialDays[1].on']);
  expect(paths({ ...fair, on: '' })).toEqual(['specialDays[0].on']);
  expect(paths({ ...fair, hours: '16:00-10:00' })).toEqual(['specialDays[0].hours']);
  expect(paths({ ...fair, hours: 'late' })).toEqual(['specialDays[0].hours']);
});

test('what the shop finds wrong stands beside the field that it is about', () => {
  const bench = { ...draftOfBench(null), plants: [{ name: '', pot: '', count: '', mlPerPlant: '' }] };
  const two = { ...bench, plants: [...bench.plants, { name: 'Fern', pot: '', count: '3', mlPerPlant: '-1' }] };
  expect(benchOfDraft('b', two).faults.map(({ path }) => path)).toEqual(['name', 'plants[1].mlPerPlant']);
  expect(fieldOfBenchPath(two, 'benches[0].plants[0].count')).toBe('plants[1].count');
  expect(fieldOfBenchPath(two, 'benches[0].area')).toBe('area');
  const program = { ...draftOfProgram(null, TODAY), recipes: ['', 'r1'] };
  expect(fieldOfProgramPath(program, 'programs[0].recipes[0]')).toBe('recipes[1].recipe');
  expect(fieldOfProgramPath(program, 'programs[0].repeat')).toBe('everyWeeks');
  const fair = { on: '2026-09-05', name: 'Harvest fair', hours: '' };
  const nobody = { name: '', phone: '' };
  const shop = {
    ...draftOfSettings(demo.shop),
    specialDays: [{ on: '', name: '', hours: '' }, fair],
    contacts: [nobody, { name: 'Owner', phone: '' }],
  };
  for (const [path, field] of [
    ['shop.openingHours.sat[1]', 'open-sat'],
    ['shop.water.pH', 'waterPh'],
    ['shop.monthlyHighsC[11]', 'high-12'],
    ['shop.specialDays[0].hours[0][1]', 'specialDays[1].hours'],
    ['shop.emergency.contacts[0].phone', 'contacts[1].phone'],
    ['shop.emergency.poisonLine', 'poisonLine'],
    ['shop.oilHotC', 'oilHotC'],
  ] as const) {
    expect(fieldOfSettingsPath(shop, path)).toBe(field);
  }
  expect(fieldOfToolsPath(draftOfTools(demo.shop), 'shop.sprayers[1].lossPerFill')).toBe('sprayers[1].lossPerFill');
});
