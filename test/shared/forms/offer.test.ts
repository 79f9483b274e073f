import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fieldsOfOffer, OfferForm, offerOfForm, twinOf, typedBreaks } from '@/shared/forms/offer';
import { faultsBeside, fieldsOfSupplier, namesake, SupplierForm, supplierOfFields } from '@/shared/forms/supplier';
import type { ShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';

type FileOffer = ShopFile['offers'][number];

const ABOUT = { commandId: 'a'.repeat(32), shop: 'shop', id: 'x', expecting: '' };
const TODAY = Day.parse('2026-03-03');

/** What a browser sends for what a form of an offer shows, with whatever was typed over it. */
function sent(offer: FileOffer | null, typed: Record<string, string> = {}): Record<string, string> {
  const { breaks, ...fields } = fieldsOfOffer(offer, 'p');
  const lines = [...breaks, { atLeast: '', price: '' }].flatMap(({ atLeast, price }, row) => [
    [`breaks[${row}].atLeast`, atLeast],
    [`breaks[${row}].price`, price],
  ]);
  return { ...ABOUT, ...fields, ...Object.fromEntries(lines), ...typed };
}

const saved = (offer: FileOffer | null, typed: Record<string, string> = {}) =>
  offerOfForm(OfferForm.parse(sent(offer, typed)), TODAY);

const money = fc
  .integer({ min: 0, max: 10 ** 12 })
  .map((micros) => `${Math.floor(micros / 1e6)}.${String(micros % 1e6).padStart(6, '0')}`);
const breaks = fc.uniqueArray(fc.record({ atLeast: fc.integer({ min: 2, max: 1_000_000 }), price: money }), {
  selector: ({ atLeast }) => atLeast,
  maxLength: 4,
});
const since = fc.constantFrom(null, '2025-11-30', '2026-03-03', '2026-12-01');
const anyOffer: fc.Arbitrary<FileOffer> = fc.record({
  id: fc.constant('x'),
  supplier: fc.constantFrom('s', 'two words'),
  product: fc.constant('p'),
  pack: fc.constantFrom('1 qt', '2.5 lb', '1 1/2 gal'),
  price: money,
  breaks,
  leadDays: fc.option(fc.integer({ min: 0, max: 365 }), { nil: null }),
  since,
  earlier: fc.array(fc.record({ since: fc.constant('2025-01-01'), price: money, breaks }), { maxLength: 2 }),
  archived: fc.boolean(),
});

test('any offer opened in its form and sent as it stands is the same offer, its price from the same day', () => {
  fc.assert(
    fc.property(anyOffer, (offer) => {
      const { earlier: _, ...rest } = offer;
      expect(saved(offer)).toEqual({ offer: rest, faults: [] });
    }),
  );
});

test('any supplier opened in its form and sent as it stands is the same supplier', () => {
  const days = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
  const anySupplier = fc.record({
    id: fc.constant('s'),
    name: fc.constantFrom('Hollow', 'Éire Gärten & Co'),
    freightPerOrder: fc.option(money, { nil: null }),
    freeFreightOver: fc.option(money, { nil: null }),
    minimumOrder: fc.option(money, { nil: null }),
    workingDays: fc.subarray([...days], { minLength: 1 }),
    closedOn: fc.subarray(['2026-07-04', '2026-12-25']),
    archived: fc.boolean(),
  });
  fc.assert(
    fc.property(anySupplier, (supplier) => {
      const {
        commandId: _1,
        shop: _2,
        expecting: _3,
        keepBoth: _4,
        id,
        ...fields
      } = SupplierForm.parse({
        ...ABOUT,
        id: 's',
        ...fieldsOfSupplier(supplier),
      });
      expect(supplierOfFields(id, fields)).toEqual(supplier);
    }),
  );
});

const OFFER: FileOffer = {
  ...{ id: 'x', supplier: 's', product: 'p', pack: '1 qt', price: '9.40', breaks: [], leadDays: 5 },
  ...{ since: '2026-02-01', earlier: [], archived: false },
};

test.each<{ name: string; typed: Record<string, string>; since: string }>([
  { name: 'a new price holds from today', typed: { price: '9.90' }, since: '2026-03-03' },
  { name: 'a new price holds from the day given', typed: { price: '9.90', since: '2026-02-20' }, since: '2026-02-20' },
  {
    name: 'a new price may hold from the day of the last',
    typed: { price: '9.90', since: '2026-02-01' },
    since: '2026-02-01',
  },
  {
    name: 'a break more is a new price',
    typed: { 'breaks[0].atLeast': '4', 'breaks[0].price': '8' },
    since: '2026-03-03',
  },
  { name: 'the same price written otherwise is the same', typed: { price: '9.4' }, since: '2026-02-01' },
  { name: 'a longer lead time is no new price', typed: { leadDays: '7' }, since: '2026-02-01' },
])('$name', ({ typed, since }) => {
  expect(saved(OFFER, typed)).toMatchObject({ faults: [], offer: { since } });
});

test.each([
  [{ price: '9.90', since: '2026-01-31' }, 'The price before holds from 2026-02-01. Give that day or a later one.'],
  [
    { price: '9.90', since: '2026-03-04' },
    '2026-03-04 is still to come. Enter the new price on the day from which it holds.',
  ],
  [
    { since: '2026-02-20' },
    'The price is the same, and holds from 2026-02-01. Leave this empty, or write the new price.',
  ],
])('%j is refused beside the day', (typed, message) => {
  expect(saved(OFFER, typed).faults).toEqual([{ path: 'since', message }]);
});

test('a price whose day nobody noted may be given one, and the price of a new offer holds from today', () => {
  expect(saved({ ...OFFER, since: null }, { since: '2026-02-20' }).offer.since).toBe('2026-02-20');
  expect(saved(null, { supplier: 's', pack: '1 qt', price: '3' }).offer.since).toBe('2026-03-03');
});

test('everything wrong with an offer is said at once, each beside its field', () => {
  const typed = {
    ...{ supplier: '', pack: '', price: '$4', leadDays: 'soon', since: 'May', 'breaks[2].atLeast': '1' },
    ...{
      'breaks[2].price': '',
      'breaks[5].atLeast': '4',
      'breaks[5].price': '2',
      'breaks[7].atLeast': '4',
      'breaks[7].price': '3',
    },
  };
  const reading = OfferForm.safeParse(sent(null, typed));
  const fields = reading.error?.issues.map(({ path }) => String(path[0])).sort();
  expect(fields).toEqual([
    'breaks[2].atLeast',
    'breaks[2].price',
    'breaks[7].atLeast',
    'leadDays',
    'pack',
    'price',
    'since',
    'supplier',
  ]);
  expect(typedBreaks(sent(null, typed))).toHaveLength(4);
  expect(OfferForm.safeParse({ ...sent(OFFER), surprise: '1' }).success).toBe(false);
});

test('a pack of the same size from the same supplier is the same offer twice, however the size is written', () => {
  const products = [{ id: 'p', form: 'liquid', densityGPerMl: null, gramsPerTeaspoon: null }] as ShopFile['products'];
  const twin = (pack: string, supplier = 's') =>
    twinOf({ offers: [OFFER], products }, { id: 'new', supplier, product: 'p', pack, price: '1' })?.id ?? null;
  expect([twin('32 fl oz'), twin('0.25 gal'), twin('1 L'), twin('1 qt', 't'), twin('3 ells')]).toEqual([
    'x',
    'x',
    null,
    null,
    null,
  ]);
});

test('a supplier without a working day is refused, and a name that is there already is found whatever its case', () => {
  const week = Object.fromEntries(['mon', 'tue', 'wed', 'thu', 'fri'].map((day) => [`works.${day}`, '']));
  const form = { ...ABOUT, ...fieldsOfSupplier(null), name: 'Hollow', ...week };
  expect(SupplierForm.safeParse(form).error?.issues[0]?.message).toBe('Tick at least one day on which they work.');
  expect(namesake([{ id: 's', name: 'Hollow  Supply' }], 't', ' hollow supply')?.id).toBe('s');
  expect(namesake([{ id: 's', name: 'Hollow' }], 's', 'hollow')).toBeNull();
  expect(faultsBeside([{ path: 'offers[0].pack', message: 'Write a size in quotes.' }], 'offers[0]')).toEqual([
    { path: 'pack', message: 'Write a size.' },
  ]);
});
