import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { finishMix } from '@/lib/commands/finish-mix';
import { recordsAnswer, recordsCsv } from '@/lib/views/log';
import { LogQuestion } from '@/shared/api/questions';
import { exact } from '@/shared/quantity/exact';
import { SMALL, smallShop, today } from '../lib/commands/small-shop';
import { CLOCK } from '../lib/data/fresh-database';

/*
 * What must be kept of every use of a pesticide on a farm, in a nursery or in a greenhouse where workers are employed.
 * Source: 40 CFR 170.311(b) as revised in 2015; the list of the section it follows, 40 CFR 170.122(c), was seen at
 * https://www.law.cornell.edu/cfr/text/40/170.122, what the revision added is from memory.
 */
const KEPT_BY_REGULATION: [asked: string, column: string, field: string][] = [
  ['name of the product', 'product', 'product'],
  ['EPA registration number', 'registration number', 'registration'],
  ['active ingredient(s)', 'active ingredients', 'actives'],
  ['crop or site treated', 'crop or site treated', 'crop'],
  ['location and description of the treated area', 'location', 'location'],
  ['date and time the application started', 'started', 'startedAt'],
  ['date and time the application ended', 'ended', 'endedAt'],
  ['duration of the restricted-entry interval', 'restricted-entry interval of the mix, minutes', 'interval'],
];

const LABELLED = {
  ...SMALL,
  shop: { ...SMALL.shop, address: '1 Quarry Lane' },
  products: SMALL.products.map((product) => ({
    ...product,
    contents: [{ substance: 'potassium salts', amount: 49, basis: '% w/w' as const }],
    label: { ...product.label, registration: '00000-0' },
  })),
  programs: [],
  applications: [],
};

/** Without an interval, a mix says stop: somebody sprayed all the same. */
const PASSED = [{ rule: 'rei-unknown', reason: 'a test' }];

async function finishedIn(file: typeof SMALL) {
  const shop = await smallShop(file);
  await finishMix(
    {
      ...{ shopId: shop, commandId: '1', recipe: 'r', benches: ['b'], plants: null, by: 'Ada' },
      ...{ startedAt: today(7), endedAt: today(8), sprayed: exact(2000), leftover: null, leftoverWent: null },
      poured: [{ product: 'p', from: [{ lotId: 'l', place: 0, amount: '6 mL', heldMore: false }], elsewhere: null }],
      ...{ conditions: null, pH: null, acid: null, passed: PASSED, plannedCost: null, planned: null },
    },
    CLOCK,
  );
  return LogQuestion.parse({ shop });
}

test('a finished mix is on record with everything that the regulation asks to be kept', async () => {
  const asked = await finishedIn(LABELLED);
  const csv = await recordsCsv(asked, CLOCK);
  if (!csv.ok) throw new Error('the list was refused');
  const lines: Record<string, string>[] = parse(csv.value, { columns: true, bom: true });
  expect(lines).toHaveLength(1);
  expect(KEPT_BY_REGULATION.map(([, column]) => lines[0]?.[column])).toEqual([
    ...['Soap', '00000-0', 'potassium salts 49 % w/w', 'Bench: 12 Ferns', 'Bench; 1 Quarry Lane'],
    ...['2026-03-31T03:00:00-04:00', '2026-03-31T04:00:00-04:00', '750'],
  ]);
  const answer = await recordsAnswer(asked, CLOCK);
  expect(answer.ok && answer.value.records[0]?.missing).toEqual([]);
  // Kept for two years from the end of the interval at the least, 40 CFR 170.311(b)(6) counts from the date of application.
  expect(answer.ok && answer.value.records[0]?.mustBeKeptUntil).toBe('2028-03-31');
});

test('each field that the regulation asks for is named on a record that lacks it', async () => {
  const asked = await finishedIn({
    ...SMALL,
    products: SMALL.products.map((product) => ({ ...product, label: { ...product.label, reiHours: null } })),
    benches: SMALL.benches.map((bench) => ({ ...bench, plants: [] })),
    ...{ programs: [], applications: [] },
  });
  const answer = await recordsAnswer(asked, CLOCK);
  const missing = answer.ok ? (answer.value.records[0]?.missing ?? []) : [];
  expect(missing.map(({ field }) => field)).toEqual(['registration', 'actives', 'interval', 'crop', 'location']);
  expect(missing[0]?.message).toBe(
    'The registration number of Soap is unknown: enter it with the product, then amend.',
  );
  const fields = KEPT_BY_REGULATION.map(([, , field]) => field);
  for (const { field } of missing) expect(fields).toContain(field);
});
