import { describe, expect, test } from 'vitest';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { longestRei } from '@/lib/engine/keepout/reopening';
import { wearingFor } from '@/lib/engine/mix/wearing';
import { usualInterval } from '@/lib/engine/rules/label-doubts';
import { parseShopFile } from '@/shared/shop-file/parse';
import { readInstant } from '@/shared/time/instant';
import { application, product, recipe, smallShop } from '../lib/engine/rules/small-shop';

/*
 * Worker protection against what is published. `seen` was read in a copy of the source; `memory` was recalled and not
 * looked up again. The text in force is 40 CFR Part 170 as revised in 2015, whose record-keeping is § 170.311(b). What
 * older sections say of ventilation, of distances by nozzle pressure and of how long a notice hangs was superseded and is
 * built nowhere; toxicity categories, pictograms and exclusion zones are the label's to say, and are not worked out here.
 */

const CFR = '40 CFR, 2015 annual edition';

describe('restricted-entry intervals', () => {
  // The words are those of the categories: I DANGER, II WARNING, III and IV CAUTION.
  test.each([
    { id: 'W01', word: 'DANGER', hours: 48, source: `${CFR}, 156.208(c)(2)(i)`, basis: 'seen' },
    { id: 'W02', word: 'WARNING', hours: 24, source: `${CFR}, 156.208(c)(2)(ii)`, basis: 'seen' },
    { id: 'W03', word: 'CAUTION', hours: 12, source: `${CFR}, 156.208(c)(2)(iii)`, basis: 'seen' },
  ])('$id ($basis, $source): $hours h where nothing else was decided for $word', ({ word, hours }) => {
    expect(usualInterval(word)).toBe(hours * 60);
  });

  test('W13 (seen, 40 CFR 156.64): each category has its word, the gravest of a mix is shown, and some labels have none', () => {
    const words = ['CAUTION', 'DANGER', 'WARNING', null];
    const { products } = smallShop({ products: words.map((signalWord, at) => product(`p${at}`, { signalWord })) });
    expect(wearingFor(products).signalWord).toBe('DANGER');
    expect(wearingFor(products.filter(({ label }) => label.signalWord !== 'DANGER')).signalWord).toBe('WARNING');
    expect(usualInterval(null)).toBeNull();
  });

  test('W09 (seen, EPA policy statement, 60 FR 21965): some products of 12 h were brought to 4 h, and none is lengthened again', () => {
    const { recipes } = smallShop({ products: [product('p1', { signalWord: 'CAUTION', reiHours: 4 })] });
    expect(recipes.map(longestRei)).toEqual([4 * 60]);
  });

  test('W05 (seen, Wash. Admin. Code 16-233-116, as 40 CFR 170.407): of 4, 12 and 24 h in one tank, 24 h', () => {
    const products = [4, 12, 24].map((reiHours) => product(`p${reiHours}`, { reiHours }));
    // In whatever turn they go in.
    const tanks = [
      recipe('r1', 'p4', 'p12', 'p24'),
      recipe('r2', 'p24', 'p12', 'p4'),
      recipe('r3', 'p12', 'p24', 'p4'),
    ];
    const { recipes } = smallShop({ products, recipes: tanks });
    expect(recipes.map(longestRei)).toEqual([24 * 60, 24 * 60, 24 * 60]);
  });

  test('an interval is kept in whole minutes, up: 12.51 h are 751, and no rounding shortens one (common practice, no source)', () => {
    const products = [12.51, 0.01].map((reiHours, at) => product(`p${at}`, { reiHours }));
    const { recipes } = smallShop({ products, recipes: [recipe('r1', 'p0'), recipe('r2', 'p1')] });
    expect(recipes.map(longestRei)).toEqual([751, 1]);
  });

  test('W33 (memory, 40 CFR 170.305): counted from the end of the application: 9:30 and 12 h is 21:30', () => {
    const shop = smallShop({
      products: [product('p1', { reiHours: 12 })],
      applications: [application('a1', '2026-05-01T08:30:00Z', '2026-05-01T09:30:00Z')],
    });
    const at = (text: string) => {
      const reading = readInstant(text);
      if (!reading.ok) throw new Error(reading.message);
      return reading.value;
    };
    expect(keepOut(shop, at('2026-05-01T10:00:00Z'))[0]?.until).toBe(at('2026-05-01T21:30:00Z'));
  });
});

describe('records', () => {
  // Source: 40 CFR 170.311(b)(1), from memory; the list of the older 170.122(c) was seen, www.law.cornell.edu/cfr/text/40/170.122.
  const record = {
    id: 'a1',
    recipe: 'r1',
    benches: ['b1'],
    startedAt: '2026-03-02T18:00:00Z',
    endedAt: '2026-03-02T18:30:00Z',
    crop: '10 ferns',
    location: 'House 2, bench b1',
    products: [
      {
        ...{ product: 'p1', dose: '2 mL/L', name: 'Product p1', registration: '0000-000' },
        ...{ actives: 'captan 50 % w/w', reiMinutes: 1_440 },
      },
    ],
  };
  const file = (changed: object) =>
    parseShopFile(
      JSON.stringify({
        format: 'bench-and-bottle/shop@1',
        shop: { name: 'A shop', timeZone: 'UTC', currency: 'USD', fillCapacity: '10 L', ...changed },
        products: [{ id: 'p1', name: 'Product p1', kind: 'fungicide', form: 'liquid' }],
        benches: [{ id: 'b1', name: 'Bench b1' }],
        recipes: [{ id: 'r1', name: 'Recipe r1', ingredients: [{ product: 'p1', dose: '2 mL/L' }] }],
        applications: [record],
      }),
    );

  test('W27: a record carries product, registration number, active ingredients, crop or site, place, start, end and interval', () => {
    const parsed = file({});
    expect(parsed.ok && parsed.file.applications[0]).toMatchObject(record);
  });

  test.each([
    { id: 'W29', years: 1, kept: false, source: '7 CFR 110.3 and 40 CFR 170.311(b): two years', basis: 'memory' },
    { id: 'W29', years: 2, kept: true, source: '7 CFR 110.3 and 40 CFR 170.311(b): two years', basis: 'memory' },
  ])(
    '$id ($basis, $source): a file may ask for $years years: $kept; until when that is, see record-keeping.test.ts',
    ({ years, kept }) => {
      expect(file({ keepRecordsYears: years }).ok).toBe(kept);
    },
  );
});
