import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { canonical } from '@/lib/engine/exchange/canonical';
import { CSV_LISTS } from '@/lib/engine/exchange/csv/column';
import { columnNamed } from '@/lib/engine/exchange/csv/match-columns';
import { TEMPLATES } from '@/lib/engine/exchange/csv/templates';
import { csvText } from '@/shared/csv/write-rows';
import { Day } from '@/shared/time/day';
import { parsedOrThrow } from '../../../data/any-shop-file';
import { planned, resultOf } from './planned';

const SHOP = canonical(
  parsedOrThrow({
    format: 'bench-and-bottle/shop@1',
    shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
    suppliers: [{ id: 's', name: 'Hill Supply' }],
    products: [
      { id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid', densityGPerMl: 1.02, label: { reiHours: 12.5 } },
      { id: 'q', name: 'Sulfur', kind: 'fungicide', form: 'powder' },
    ],
    offers: [{ id: 'o', supplier: 's', product: 'p', pack: '1 qt', price: '40.00', since: '2026-01-01' }],
    lots: [{ id: 'l', product: 'p', pack: '1 qt', paid: '74.00', receivedOn: '2026-02-02', keptIn: 'cabinet' }],
  }),
);
const faultsOf = (...asked: Parameters<typeof planned>) =>
  planned(...asked).faults.map(({ line, column, message }) => `${line} ${column}: ${message}`);

test('a list made by somebody else comes in by the names it has, with whatever it says of a bottle', () => {
  const text =
    'Product;Größe;SIZE;Best before;Received;Left;Price paid\nsoap;x;1 qt;31.12.2027;13.02.2026;600,5 mL;12,50\n';
  const { lots } = resultOf(SHOP, 'lots', text);
  expect(lots[0]).toEqual({
    ...{ id: 'p-2026-02-13', product: 'p', pack: '1 qt', count: 1, remaining: '600.5 mL', paid: '12.50' },
    ...{ receivedOn: '2026-02-13', openedOn: null, expiresOn: '2027-12-31', keptIn: null, order: null, offer: null },
  });
  expect(lots).toHaveLength(2);
});

test('everything that a product is can be said in a line, lists in one column or in numbered ones', () => {
  const text = [
    'name,kind,form,formulation,density,g/tsp,content 1,content 2,rates,REI,PHI,max per year,days between,mode 1,mode 2,signal word,PPE,pH min,pH max,not with,registration number,never above C,first aid,storage,keeps unopened,keeps opened,mix order,alkali silicate,bar code',
    'Basil spray,PH ADJUSTER,Liquid,SL,"1,05",,rosemary oil 1.4% w/w,"a; b 2,5 g/L","ferns, all: 8 mL/gal to 20 mL/gal; roses: up to 0,5 %; figs: 5 mL/gal or more; dill:",12,0,3,7,IRAC UN,FRAC NC,CAUTION,gloves; goggles,5,"7,5",sulfur,R-1,"31,5","If swallowed: call, do not wait",locked; dry,730,365,4,yes,2000000000015',
  ].join('\n');
  const { products } = resultOf(SHOP, 'products', text.replace('"a; b 2,5 g/L"', '"""a; b 2,5 g/L"""'));
  expect(products[0]).toEqual({
    ...{ id: 'basil-spray', name: 'Basil spray', kind: 'pH adjuster', form: 'liquid', formulation: 'SL' },
    ...{ densityGPerMl: 1.05, gramsPerTeaspoon: null, mixOrder: 4, alkaliSilicate: true, archived: false },
    contents: [
      { substance: 'rosemary oil', amount: 1.4, basis: '% w/w' },
      { substance: 'a; b', amount: 2.5, basis: 'g/L' },
    ],
    label: {
      rates: [
        { use: 'ferns, all', min: '8 mL/gal', max: '20 mL/gal' },
        { use: 'roses', min: null, max: '0.5 %' },
        { use: 'figs', min: '5 mL/gal', max: null },
        { use: 'dill', min: null, max: null },
      ],
      ...{ reiHours: 12, phiDays: 0, maxApplicationsPerYear: 3, minDaysBetween: 7, modes: ['IRAC UN', 'FRAC NC'] },
      ...{ signalWord: 'CAUTION', protectiveEquipment: ['gloves', 'goggles'], sprayPh: { min: 5, max: 7.5 } },
      ...{ doNotMixWith: ['sulfur'], registration: 'R-1' },
      ...{ hotAboveC: 31.5, firstAid: 'If swallowed: call, do not wait', storage: 'locked; dry' },
    },
    ...{ shelfLife: { unopenedDays: 730, openedDays: 365 }, gtins: ['2000000000015'], madeFrom: [] },
  });
});

test('what a list has no column for stays, an empty cell says that nothing is known, and a new price makes the old one history', () => {
  expect(resultOf(SHOP, 'products', 'id,REI\np,\n').products[0]).toEqual({
    ...SHOP.products[0],
    label: { ...SHOP.products[0]?.label, reiHours: null },
  });
  expect(resultOf(SHOP, 'offers', 'id,price,breaks\no,"41,50",4: 39.00; 12: 38\n').offers[0]).toEqual({
    ...SHOP.offers[0],
    ...{
      price: '41.50',
      since: null,
      breaks: [
        { atLeast: 4, price: '39.00' },
        { atLeast: 12, price: '38.00' },
      ],
    },
    earlier: [{ since: '2026-01-01', price: '40.00', breaks: [] }],
  });
});

test('every bad line is listed with its line, its column and what to write, in the words of a list', () => {
  const text =
    'id,product,size,count,remaining,paid,received,opened\nl2,Sop,1 qx,1,,,2026-02-30,\nl2,Sulfur,1 qt,0,,12 USD,2026-02-03,\n\n"l\n3",Soap,1 qt,2,5 mL,,2026-02-03,2026-02-01\n';
  expect(faultsOf(SHOP, 'lots', text)).toEqual([
    '2 product: There is no product "Sop". Did you mean "Soap"? Write its name or its id, or bring the products in first.',
    expect.stringMatching(/^2 size: "qx" is not a unit known here/),
    expect.stringMatching(/^2 received: "2026-02-30" is not a date/),
    '3 id: The id "l2" is already taken by line 2. Give this lot another one.',
    expect.stringMatching(
      /^3 size: "1 qt" is a volume, and this product is a powder.* into gramsPerTeaspoon of product "q"\.$/,
    ),
    '3 count: 0 is below 1. Write a whole number of containers, 1 or more.',
    expect.stringMatching(/^3 paid: "12 USD": write the number alone/),
    '5 id: This holds a line break. Write it on one line.',
    expect.stringMatching(/^5 remaining: A lot of 2 is 2 full containers/),
    expect.stringMatching(/^5 opened: /),
    expect.stringMatching(/^5 opened: /),
  ]);
});

test('a line with more or fewer cells than there are columns is refused, because it says something else than it seems to', () => {
  expect(
    faultsOf(SHOP, 'offers', 'supplier,product,pack,price\nHill Supply,Soap,1 qt,12,50\nHill Supply,Soap\n'),
  ).toEqual([
    expect.stringMatching(/^2 null: This line has 5 cells, and the first line names 4 columns/),
    expect.stringMatching(/^3 null: This line has only 2 of 4 cells/),
    '3 pack: This is missing. Write a size with its unit, such as "1 qt", "600 mL" or "2.5 lb".',
    '3 price: This is missing. Write an amount of money, such as "212.00".',
  ]);
});

test('what every line must say and no column does is said once', () => {
  expect(faultsOf(SHOP, 'offers', 'supplier,product,price\nHill Supply,Soap,1\nHill Supply,Soap,2\n')).toEqual([
    '1 pack: No column says this. Add one called "pack", or choose by hand which column it is.',
  ]);
});

test('which column is what can be chosen by hand, and a column can be left out', () => {
  const columns = ['supplier', 'product', 'pack', null, 'price'];
  const { offers } = resultOf(SHOP, 'offers', 'a,b,c,price,e\nHill Supply,Soap,1 gal,by hand,50\n', { columns });
  expect(offers[0]).toMatchObject({ supplier: 's', product: 'p', pack: '1 gal', price: '50.00' });
});

test('what the books hold is not rewritten by a list', () => {
  expect(faultsOf(SHOP, 'lots', 'id,paid\nl,80\n')).toEqual([
    expect.stringMatching(/^2 paid: Lot "l" is in the books with paid "74.00"/),
  ]);
});

test('what a file leaves open is asked, and answered once for all of it', () => {
  const text =
    'supplier;product;pack;price;since\nNew Hands;Soap;1 qt;1,234;03/04/2026\nnew  hands;Soap;1 gal;5,5;02/04/2026\n';
  const asked = planned(SHOP, 'offers', text);
  expect(asked.open).toEqual({
    decimals: '1,234',
    dayOrder: { column: 'since', example: '03/04/2026' },
    suppliers: ['New Hands'],
  });
  expect(asked.faults.map(({ line, column }) => `${line} ${column}`)).toEqual([
    ...['2 supplier', '2 price', '2 since', '3 supplier', '3 since'],
  ]);
  const { offers, suppliers } = resultOf(SHOP, 'offers', text, {
    decimals: 'comma',
    dayOrder: 'day-first',
    createSuppliers: true,
  });
  expect(offers.slice(0, 2)).toMatchObject([
    { id: 'new-hands-p-1-qt', supplier: 'new-hands', price: '1.234', since: '2026-04-03' },
    { id: 'new-hands-p-1-gal', supplier: 'new-hands', price: '5.50', since: '2026-04-02' },
  ]);
  expect(suppliers.map(({ name }) => name)).toEqual(['New Hands', 'Hill Supply']);
});

test('a second product of a name is said, an id that is a page is refused, and ids that are made never meet', () => {
  const text = 'id,name,kind,form\n,Soap,other,liquid\n,Soap,other,liquid\nscan,Scan,other,liquid\n';
  const { warnings, faults } = planned(SHOP, 'products', text);
  expect(warnings.map(({ line, message }) => `${line} ${message}`)).toEqual([
    '2 Another product of this name is in the shop as "p". If it is the same, give this line its id.',
    '3 Another product of this name is in the shop as "p". If it is the same, give this line its id.',
  ]);
  expect(faults).toMatchObject([{ line: 4, column: 'id' }]);
  const made = resultOf(SHOP, 'products', text.replace('scan,Scan', ',Scan')).products.map(({ id }) => id);
  expect(made).toEqual(['soap', 'soap-2', 'scan-2', 'p', 'q']);
});

test('it says how far it is', () => {
  const text = `name,kind,form\n${Array.from({ length: 600 }, (_, place) => `Feed ${place},nutrient,liquid`).join('\n')}\n`;
  expect(planned(SHOP, 'products', text).told).toEqual([
    { step: 'read', lines: 600 },
    { step: 'checked', count: 250, of: 600 },
    { step: 'checked', count: 500, of: 600 },
    { step: 'together', lines: 600 },
  ]);
});

test('more faults than anybody reads are cut off, and that is said', () => {
  const text = `name,kind,form\n${'Feed,none,gas\n'.repeat(3_000)}`;
  const { faults } = planned(SHOP, 'products', text);
  expect(faults).toHaveLength(5_001);
  expect(faults.at(-1)).toMatchObject({ line: null, message: expect.stringMatching(/more faults than these/) });
});

test('the templates come into the demo shop as they are', () => {
  const demo = canonical(parsedOrThrow(demoShop(Day.parse('2026-03-31'))));
  for (const list of CSV_LISTS) {
    const { faults, warnings, columns, result } = planned(demo, list, csvText(TEMPLATES[list]));
    expect({ list, faults, warnings }).toEqual({ list, faults: [], warnings: [] });
    expect(columns.every(({ field }) => field !== null)).toBe(true);
    expect(result?.comparison.collections[list].added).toHaveLength(2);
  }
});

test.each([
  ['lots', 'Best Before', 'expiresOn'],
  ['lots', 'best_before', 'expiresOn'],
  ['lots', 'SIZE', 'pack'],
  ['offers', 'Prix', null],
  ['products', 'Dénsity (g/mL)', 'densityGPerMl'],
  ['products', 'Content 12', 'contents'],
  ['products', 'name 2', null],
  ['products', 'label.reiHours', 'label.reiHours'],
] as const)('in %s a column called %j is %j', (list, name, field) => {
  expect(columnNamed(list, name)?.field ?? null).toBe(field);
});
