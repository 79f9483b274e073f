import { expect, test } from 'vitest';
import { parseShopFile } from '@/shared/shop-file/parse';
import { changed, type Json, type Path, smallShop } from './small-shop';

const parse = (file: Json) => parseShopFile(JSON.stringify(file));
const faultsOf = (file: Json) => {
  const parsed = parse(file);
  return parsed.ok ? [] : parsed.faults;
};
const pathsOf = (file: Json) => faultsOf(file).map(({ path }) => path);

test('a shop that uses every field is read as it stands', () => {
  const parsed = parse(smallShop());
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  expect(parsed.file.lots[0]).toMatchObject({ pack: '1 qt', remaining: '600 mL', paid: '74.00' });
});

test('what may be left out gets the value that the contract states', () => {
  const shop = { name: 'Corner', timeZone: 'UTC', currency: 'EUR', fillCapacity: '5 L' };
  const product = { id: 'p', name: 'P', kind: 'other', form: 'liquid' };
  const parsed = parse({
    format: 'bench-and-bottle/shop@1',
    shop,
    suppliers: [{ id: 's', name: 'S' }],
    products: [product],
    lots: [{ id: 'l', product: 'p', pack: '1 L', receivedOn: '2026-01-01' }],
    benches: [{ id: 'b', name: 'B' }],
  });
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
  expect(parsed.file.shop).toMatchObject({
    units: 'us',
    lossPerFill: '0 mL',
    measuringStep: '0 mL',
    safetyDays: 0,
    wagePerHour: null,
    sameModeInARow: 2,
    capitalPerYear: 0.1,
    water: null,
  });
  expect(parsed.file.suppliers[0]).toMatchObject({
    freightPerOrder: null,
    workingDays: ['mon', 'tue', 'wed', 'thu', 'fri'],
  });
  expect(parsed.file.products[0]?.label).toMatchObject({ rates: [], reiHours: null });
  expect(parsed.file.lots[0]).toMatchObject({ count: 1, remaining: null, paid: null, openedOn: null, expiresOn: null });
  expect(parsed.file.benches[0]).toMatchObject({ customers: true, coverage: 1, plants: [] });
  expect(parsed.file.programs).toEqual([]);
});

const REFUSALS: [name: string, at: Path, value: Json | undefined, path: string, says: RegExp][] = [
  ['another format', ['format'], 'bench-and-bottle/shop@2', 'format', /Write "bench-and-bottle\/shop@1"/],
  ['an unknown field', ['products', 0, 'label', 'reiHour'], 12, 'products[0].label.reiHour', /mean "reiHours"/],
  ['an unknown list', ['bottles'], [], 'bottles', /The fields here are format, shop/],
  ['a missing name', ['shop', 'name'], undefined, 'shop.name', /missing.*Write a name/],
  ['no working day', ['suppliers', 0, 'workingDays'], [], 'suppliers[0].workingDays', /Name the days/],
  ['a working day twice', ['suppliers', 0, 'workingDays'], ['mon', 'mon'], 'suppliers[0].workingDays[1]', /once/],
  ['a zone that is none', ['shop', 'timeZone'], 'Mars/North', 'shop.timeZone', /not a time zone/],
  ['a currency that is none', ['shop', 'currency'], 'ZZZ', 'shop.currency', /ISO 4217/],
  ['a currency in small letters', ['shop', 'currency'], 'eur', 'shop.currency', /"EUR"/],
  ['money as a number', ['offers', 0, 'price'], 212, 'offers[0].price', /"212\.00"/],
  ['a negative price', ['offers', 0, 'price'], '-1', 'offers[0].price', /negative/],
  ['a discount from one pack', ['offers', 0, 'breaks', 0, 'atLeast'], 1, 'offers[0].breaks[0].atLeast', /2 or more/],
  ['a sprayer that loses all', ['shop', 'lossPerFill'], '2 gal', 'shop.lossPerFill', /smaller loss/],
  ['a sprayer of nothing', ['shop', 'fillCapacity'], '0 mL', 'shop.fillCapacity', /what one fill/],
  ['an ounce of a sprayer', ['shop', 'fillCapacity'], '64 oz', 'shop.fillCapacity', /fl oz/],
  ['an ounce of a liquid', ['lots', 0, 'pack'], '32 oz', 'lots[0].pack', /fl oz/],
  ['an unknown unit', ['lots', 0, 'pack'], '1 firkin', 'lots[0].pack', /firkin/],
  ['a size without a unit', ['lots', 0, 'pack'], '600', 'lots[0].pack', /unit/],
  ['a pack of nothing', ['lots', 0, 'pack'], '0 mL', 'lots[0].pack', /nothing/],
  ['negative stock', ['lots', 0, 'remaining'], '-5 mL', 'lots[0].remaining', /negative/],
  ['more left than the pack holds', ['lots', 0, 'remaining'], '946.4 mL', 'lots[0].remaining', /more than the pack/],
  ['part of three full containers', ['lots', 1, 'remaining'], '600 g', 'lots[1].remaining', /line of its own/],
  ['three containers, opened', ['lots', 1, 'openedOn'], '2026-02-10', 'lots[1].openedOn', /line of its own/],
  ['opened before received', ['lots', 0, 'openedOn'], '2026-02-01', 'lots[0].openedOn', /before it was received/],
  ['a day that does not exist', ['lots', 0, 'receivedOn'], '2026-02-30', 'lots[0].receivedOn', /28 days/],
  ['a count of nothing', ['lots', 0, 'count'], 0, 'lots[0].count', /1 or more/],
  ['half a plant', ['benches', 0, 'plants', 0, 'count'], 1.5, 'benches[0].plants[0].count', /not a whole number/],
  ['no coverage', ['benches', 0, 'coverage'], 0, 'benches[0].coverage', /above 0/],
  ['a pH off the scale', ['recipes', 0, 'targetPh'], 15, 'recipes[0].targetPh', /0 to 14/],
  ['a kind that is none', ['products', 0, 'kind'], 'poison', 'products[0].kind', /"fungicide"/],
  ['a percentage above 100', ['products', 0, 'contents', 0, 'amount'], 101, 'products[0].contents[0].amount', /100/],
  ['a negative interval', ['products', 0, 'label', 'reiHours'], -1, 'products[0].label.reiHours', /0 or more/],
  [
    'a range upside down',
    ['products', 0, 'label', 'rates', 0, 'min'],
    '2 tbsp/gal',
    'products[0].label.rates[0]',
    /above/,
  ],
  ['a pH range upside down', ['products', 0, 'label', 'sprayPh', 'min'], 8, 'products[0].label.sprayPh', /above/],
  ['a dose per nothing', ['recipes', 0, 'ingredients', 0, 'dose'], '12 mL', 'recipes[0].ingredients[0].dose', /per/],
  [
    'an ounce of a dose',
    ['recipes', 0, 'ingredients', 0, 'dose'],
    '1 oz/gal',
    'recipes[0].ingredients[0].dose',
    /fl oz/,
  ],
  [
    'ppm of what is not in it',
    ['recipes', 0, 'ingredients', 0, 'dose'],
    '40 ppm spinosad',
    'recipes[0].ingredients[0].dose',
    /holds no "spinosad"/,
  ],
  ['a second lot of one id', ['lots', 1, 'id'], 'l1', 'lots[1].id', /already taken by lots\[0\]/],
  ['a product that is not there', ['lots', 0, 'product'], 'p11', 'lots[0].product', /mean "p1"/],
  ['a recipe that is not there', ['programs', 0, 'recipes', 0], 'zz', 'programs[0].recipes[0]', /"r1"/],
  ['a bench twice', ['programs', 0, 'benches'], ['b1', 'b1'], 'programs[0].benches[1]', /once/],
  ['a program of no bench', ['programs', 0, 'benches'], [], 'programs[0].benches', /at least one bench/],
  ['a program of no recipe', ['programs', 0, 'recipes'], [], 'programs[0].recipes', /at least one recipe/],
  ['a season that ends first', ['programs', 0, 'endsOn'], '2026-03-02', 'programs[0].endsOn', /before it starts/],
  ['negative minutes', ['programs', 0, 'minutes'], -1, 'programs[0].minutes', /0 or more/],
  ['a start at 24:00', ['programs', 0, 'startTime'], '24:00', 'programs[0].startTime', /23:59/],
  ['a rule for every year', ['programs', 0, 'repeat'], 'FREQ=YEARLY', 'programs[0].repeat', /YEARLY/],
  [
    'an end before the start',
    ['applications', 0, 'endedAt'],
    '2026-02-24T17:29:00-05:00',
    'applications[0].endedAt',
    /before it started/,
  ],
  [
    'a moment of no place',
    ['applications', 0, 'startedAt'],
    '2026-02-24T22:30:00',
    'applications[0].startedAt',
    /offset/,
  ],
  [
    'closing before opening',
    ['shop', 'openingHours', 'mon', 0],
    ['09:00', '09:00'],
    'shop.openingHours.mon[0]',
    /later time second/,
  ],
  [
    'openings that overlap',
    ['shop', 'openingHours', 'mon', 1],
    ['11:59', '18:00'],
    'shop.openingHours.mon[1]',
    /overlaps/,
  ],
  [
    'a special day that closes before it opens',
    ['shop', 'specialDays'],
    [{ on: '2026-07-04', hours: [['18:00', '09:00']] }],
    'shop.specialDays[0].hours[0]',
    /later time second/,
  ],
  [
    'a special day told twice',
    ['shop', 'specialDays'],
    [{ on: '2026-07-04' }, { on: '2026-07-04', hours: [['09:00', '12:00']] }],
    'shop.specialDays[1]',
    /once/,
  ],
  [
    'an acid of a record in a unit that is none',
    ['applications', 0, 'acid', 'amount'],
    '2 furlongs',
    'applications[0].acid.amount',
    /furlongs/,
  ],
  [
    'a liquid of a record by an ounce',
    ['applications', 0, 'products', 0, 'amount'],
    '2 oz',
    'applications[0].products[0].amount',
    /fl oz/,
  ],
  [
    'a stock solution of a substance that its source has not',
    ['products', 1, 'madeFrom'],
    [{ product: 'p1', dose: '40 ppm gold' }],
    'products[1].madeFrom[0].dose',
    /holds no/,
  ],
  ['a name over two lines', ['shop', 'name'], 'a\nb', 'shop.name', /line break/],
  ['an id that is too long', ['lots', 0, 'id'], 'x'.repeat(65), 'lots[0].id', /64/],
  ['a lake of spray', ['benches', 0, 'plants', 0, 'count'], 999_999, 'programs[0].benches', /10,000/],
];

test.each(REFUSALS)('%s is refused, with its place and what to write', (_, at, value, path, says) => {
  const faults = faultsOf(changed(smallShop(), at, value));
  expect(faults.map((fault) => fault.path)).toEqual([path]);
  expect(faults[0]?.message).toMatch(says);
});

test('a liquid in pounds asks for its density, and a powder in spoons for the weight of one', () => {
  const noDensity = changed(smallShop(), ['products', 0, 'densityGPerMl'], null);
  const liquid = faultsOf(changed(noDensity, ['offers', 0, 'pack'], '8 lb'));
  expect(liquid).toMatchObject([{ path: 'offers[0].pack' }]);
  expect(liquid[0]?.message).toContain('products[0].densityGPerMl');
  const noSpoon = changed(smallShop(), ['products', 1, 'gramsPerTeaspoon'], null);
  const powder = faultsOf(changed(noSpoon, ['lots', 1, 'pack'], '1 cup'));
  expect(powder).toMatchObject([{ path: 'lots[1].pack' }]);
  expect(powder[0]?.message).toContain('products[1].gramsPerTeaspoon');
  expect(pathsOf(changed(smallShop(), ['offers', 0, 'pack'], '8 lb'))).toEqual([]);
});

test('a pack is full to the microlitre, and one more is too much', () => {
  const left = (remaining: string) => pathsOf(changed(smallShop(), ['lots', 0, 'remaining'], remaining));
  expect(left('946.353 mL')).toEqual([]);
  expect(left('946.354 mL')).toEqual(['lots[0].remaining']);
  expect(left('0 mL')).toEqual([]);
});

test('three full containers may be written as null or as what they hold together', () => {
  const parsed = parse(changed(smallShop(), ['lots', 1, 'remaining'], '750 g'));
  expect(parsed.ok && parsed.file.lots[1]?.remaining).toBeNull();
});

test('stock that was out of date when it came is nobody’s mistake', () => {
  expect(pathsOf(changed(smallShop(), ['lots', 0, 'expiresOn'], '2026-01-01'))).toEqual([]);
});

test('an application that ended the moment it started is believed', () => {
  expect(pathsOf(changed(smallShop(), ['applications', 0, 'endedAt'], '2026-02-24T17:30:00-05:00'))).toEqual([]);
});

test('openings that touch do not overlap', () => {
  expect(pathsOf(changed(smallShop(), ['shop', 'openingHours', 'mon', 1], ['12:00', '18:00']))).toEqual([]);
});

test('faults in one part do not hide those in another, and nothing is said twice', () => {
  let file = changed(smallShop(), ['shop', 'wagePerHour'], 18);
  file = changed(file, ['lots', 0, 'paid'], 74);
  file = changed(file, ['lots', 0, 'remaining'], '2 gal');
  file = changed(file, ['lots', 0, 'openedOn'], '2026-01-01');
  file = changed(file, ['programs', 0, 'benches', 1], 'b3');
  file = changed(file, ['extra'], 1);
  expect(pathsOf(file).sort()).toEqual([
    'extra',
    'lots[0].openedOn',
    'lots[0].paid',
    'lots[0].remaining',
    'programs[0].benches[1]',
    'shop.wagePerHour',
  ]);
});

test('what rests on something unreadable is not complained about', () => {
  expect(pathsOf(changed(smallShop(), ['products', 0, 'id'], 5))).toEqual(['products[0].id']);
  expect(pathsOf(changed(smallShop(), ['products'], 'none'))).toEqual(['products']);
  const weighed = changed(smallShop(), ['offers', 0, 'pack'], '8 lb');
  expect(pathsOf(changed(weighed, ['products', 0, 'densityGPerMl'], 'light'))).toEqual(['products[0].densityGPerMl']);
  const ppm = changed(smallShop(), ['recipes', 0, 'ingredients', 0, 'dose'], '40 ppm spinosad');
  expect(pathsOf(changed(ppm, ['products', 0, 'contents', 0, 'substance'], 7))).toEqual([
    'products[0].contents[0].substance',
  ]);
});

test('fields named like the inside of JavaScript are unknown like any other', () => {
  const parsed = parseShopFile('{"format":"bench-and-bottle/shop@1","__proto__":{"a":1},"constructor":2}');
  const paths = parsed.ok ? [] : parsed.faults.map(({ path }) => path);
  expect(paths).toEqual(['shop', '__proto__', 'constructor']);
});

test('a mark before the first bracket, as some editors write it, does no harm', () => {
  expect(parseShopFile(`\uFEFF${JSON.stringify(smallShop())}`).ok).toBe(true);
});

test('more than 20 MB is refused without being read', () => {
  const faults = parseShopFile(`{"a":"${'é'.repeat(10_000_001)}"}`);
  expect(faults).toEqual({ ok: false, faults: [{ path: '', message: expect.stringContaining('20 MB') }] });
});

test('thousands of faults are counted, not all told', () => {
  const faults = faultsOf(
    changed(
      smallShop(),
      ['lots'],
      Array.from({ length: 6_000 }, () => 1),
    ),
  );
  expect(faults).toHaveLength(5_001);
  expect(faults.at(-1)?.message).toBe('There are 1000 faults more. Put these right first.');
});

test('more containers than any shelf holds are refused', () => {
  const lot = { id: 'x', product: 'p2', pack: '1 g', count: 10_000, receivedOn: '2026-01-01' };
  const lots = Array.from({ length: 12 }, (_, index) => ({ ...lot, id: `x${index}` }));
  expect(pathsOf(changed(smallShop(), ['lots'], lots))).toEqual(['lots[10].count']);
});
