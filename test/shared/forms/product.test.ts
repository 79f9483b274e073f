import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ProductForm } from '@/shared/forms/product';
import { askedOf } from '@/shared/forms/product-asks';
import { faultsInForm } from '@/shared/forms/product-faults';
import { formOfProduct, productOfForm } from '@/shared/forms/product-fields';
import { parseShopFile } from '@/shared/shop-file/parse';
import { anyShopFile } from '../../lib/data/any-shop-file';

const anyUnits = fc.constantFrom('us' as const, 'metric' as const);
const anyProduct = anyShopFile.chain(({ products }) => fc.constantFrom(...products));

test('a product put into a form and read again is the same product, whatever is in it', () => {
  fc.assert(
    fc.property(anyProduct, anyUnits, (product, units) => {
      expect(productOfForm(formOfProduct(product, units), product.id, units)).toEqual(product);
    }),
  );
});

test('a form read and put into fields again is the same form, and the door knows every field of it', () => {
  fc.assert(
    fc.property(anyProduct, anyUnits, (product, units) => {
      const fields = formOfProduct(product, units);
      const about = { commandId: 'a'.repeat(32), shop: 's', id: product.id, standing: '', keepBoth: '' };
      const read = ProductForm.safeParse({ ...about, ...fields });
      expect(read.data).toEqual({ ...about, fields });
      // biome-ignore lint/suspicious/noExplicitAny: the form gives what parsing judges; here it is known to fit.
      expect(formOfProduct(productOfForm(fields, product.id, units) as any, units)).toEqual(fields);
    }),
  );
});

test('a form with a field that no product has, or without what it is about, is not read', () => {
  const about = { commandId: 'a'.repeat(32), shop: 's', id: '', standing: '' };
  expect(ProductForm.safeParse({ ...about, name: 'Soap' }).success).toBe(true);
  for (const more of [
    { reiHours: '4' },
    { 'contents[0]': 'x' },
    { 'contents[0].substances': 'x' },
    { commandId: '' },
  ]) {
    expect(ProductForm.safeParse({ ...about, ...more }).success).toBe(false);
  }
});

test('spaces in a bar code, blank lines, and lines taken out leave no trace', () => {
  const fields = {
    ...{ name: ' Soap ', kind: 'insecticide', form: 'liquid', gtins: '4006381 333931\r\n\r\n' },
    ...{ 'contents[0].substance': '', 'contents[0].amount': ' ', 'contents[0].basis': '% w/w' },
    ...{ 'contents[3].substance': 'fatty acids', 'contents[3].amount': '49', 'contents[3].basis': '% w/v' },
    ...{ 'label.modes': 'IRAC 3A\n  \n IRAC 4A ' },
  };
  const product = productOfForm(fields, 'soap', 'metric');
  expect(product).toMatchObject({ name: 'Soap', gtins: ['4006381333931'], formulation: null, densityGPerMl: null });
  expect(product.contents).toEqual([{ substance: 'fatty acids', amount: 49, basis: '% w/v' }]);
  expect(product.label?.modes).toEqual(['IRAC 3A', 'IRAC 4A']);
});

/** What the parser finds wrong in a form, beside its fields. */
function faultsOf(fields: Record<string, string>) {
  const file = {
    format: 'bench-and-bottle/shop@1',
    shop: { name: 'A', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
    products: [productOfForm(fields, 'p', 'metric')],
  };
  const parsed = parseShopFile(JSON.stringify(file));
  const faults = parsed.ok ? [] : faultsInForm(parsed.faults, fields, { recipes: [], wasForm: null });
  return Object.fromEntries(faults.map(({ path, message }) => [path, message]));
}

const FILLED = { name: 'Soap', kind: 'insecticide', form: 'liquid' };

test('each fault stands beside its own field, in words for somebody with a form and no file', () => {
  const faults = faultsOf({
    ...FILLED,
    ...{ name: '', densityGPerMl: '0,95', 'label.reiHours': '-4', 'label.sprayPh.max': '6', gtins: '12345678' },
    ...{ 'label.rates[0].use': '', 'label.rates[0].min': '', 'label.rates[0].max': '' },
    ...{ 'label.rates[4].use': 'ferns', 'label.rates[4].min': '3 oz/gal', 'label.rates[4].max': '' },
    ...{ 'contents[2].substance': 'oil', 'contents[2].amount': '101', 'contents[2].basis': '% w/w' },
    ...{ 'label.modes': `IRAC 3A\n${'long '.repeat(20)}`, 'shelfLife.openedDays': '1e400' },
  });
  expect(Object.keys(faults).sort()).toEqual([
    'contents[2].amount',
    'densityGPerMl',
    'gtins',
    'label.modes',
    'label.rates[4].min',
    'label.reiHours',
    'label.sprayPh.min',
    'name',
    'shelfLife.openedDays',
  ]);
  expect(faults.name).toBe('This is empty. Write a name.');
  expect(faults.densityGPerMl).toBe('This is the text "0,95". Write the density in g/mL.');
  expect(faults['label.reiHours']).toMatch(/0 or more; leave it empty when it is unknown\.$/);
  expect(faults['label.rates[4].min']).toMatch(/fluid ounces or ounces by weight/);
  const kindless = faultsOf({ name: 'Soap' });
  expect(Object.keys(kindless).sort()).toEqual(['form', 'kind']);
});

test('a range the wrong way round is told where it can be put right', () => {
  const range = { 'label.rates[1].use': 'ferns', 'label.rates[1].min': '9 mL/gal', 'label.rates[1].max': '2 mL/gal' };
  expect(Object.keys(faultsOf({ ...FILLED, ...range }))).toEqual(['label.rates[1].min']);
  const acid = { 'label.sprayPh.min': '7', 'label.sprayPh.max': '5' };
  expect(Object.keys(faultsOf({ ...FILLED, ...acid }))).toEqual(['label.sprayPh.min']);
});

test('what a changed product no longer fits stands beside what has to stay as it was', () => {
  const elsewhere = { recipes: [{ name: 'Ferns' }], wasForm: 'liquid' };
  const beside = (path: string, fields: Record<string, string>) =>
    faultsInForm([{ path, message: 'It does not fit.' }], fields, elsewhere)[0];
  expect(beside('lots[3].pack', { form: 'powder' })?.path).toBe('form');
  expect(beside('lots[3].pack', { form: 'liquid' })?.path).toBe('densityGPerMl');
  expect(beside('recipes[0].ingredients[1].dose', { form: 'liquid' })).toEqual({
    path: 'contents[0].substance',
    message: 'Recipe Ferns needs it as it was. It does not fit.',
  });
});

test('a form asks what the kind needs', () => {
  expect([...askedOf('nutrient', 'powder')].sort()).toEqual(['silicate', 'spoon']);
  expect(askedOf('miticide', 'liquid').has('modes')).toBe(true);
  expect(askedOf('miticide', 'liquid').has('spoon')).toBe(false);
  expect(askedOf('', '').size).toBe(0);
});

test('a limit without a letter is in the units of the shop', () => {
  const limit = (typed: string, units: 'us' | 'metric') =>
    productOfForm({ 'label.hotAboveC': typed }, 'p', units).label?.hotAboveC;
  expect([limit('85', 'us'), limit('85 F', 'metric'), limit('29.5', 'metric'), limit('29.5 C', 'us')]).toEqual([
    29.4, 29.4, 29.5, 29.5,
  ]);
  // What is no temperature stays, for the sentence that refuses it.
  expect(limit('warm', 'us')).toBe('warm');
  expect(limit('', 'us')).toBeNull();
});
