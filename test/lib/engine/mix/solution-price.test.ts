import { expect, test } from 'vitest';
import { askedMix } from '@/lib/engine/mix/asked-mix';
import { offerCostOf } from '@/lib/engine/mix/offer-cost';
import { offerLineWorking } from '@/lib/engine/working/mix-cost-figures';
import { checkOf, recipeWorking } from '@/lib/engine/working/recipe-figures';
import { readMixQuery } from '@/shared/forms/mix-query';
import { instantOf } from '@/shared/time/instant';
import { type Fields, product, recipe, smallShop } from '../rules/small-shop';

const SUPPLIERS = [{ id: 's1', name: 'Hill Supply' }];
const OFFER = { id: 'o1', supplier: 's1', product: 'fe', pack: '500 g', price: '20.00', leadDays: 3 };

/** A litre of two sprays: of a powder, and of its solution at the dose that is as strong; and of what both are made into. */
function priced(offers: Fields[]) {
  const shop = smallShop({
    suppliers: SUPPLIERS,
    offers,
    products: [
      product('fe', {}, { form: 'powder' }),
      product('s', {}, { madeFrom: [{ product: 'fe', dose: '72 g/L' }] }),
      product('weak', {}, { madeFrom: [{ product: 's', dose: '100 mL/L' }] }),
    ],
    recipes: [
      recipe('of powder', { product: 'fe', dose: '0.36 g/L' }),
      recipe('of solution', { product: 's', dose: '5 mL/L' }),
      recipe('of weak', { product: 'weak', dose: '50 mL/L' }),
    ],
  });
  const costs = shop.recipes.map((each) => checkOf(shop, each).costPerLitre);
  return { shop, costs };
}

test('a stock solution costs what is in it, whether it was made of a product or of another solution', () => {
  // 0.36 g at 0.04 a gram.
  expect(priced([OFFER]).costs).toEqual([14_400, 14_400, 14_400]);
});

test('the working says what is in it, and at which offer', () => {
  const working = recipeWorking(priced([OFFER]).shop, ['of solution', 'line', '0', 'cost']);
  expect(working?.value).toEqual({ kind: 'money', micros: 14_400 });
  expect(working?.steps.map(({ label, value }) => [label, value])).toEqual([
    ['In a litre', { kind: 'volume', ml: 5 }],
    ['Product fe in each litre of it', { kind: 'mass', g: 72 }],
    ['A pack of 500 g of Product fe', { kind: 'money', micros: 20_000_000 }],
  ]);
});

test('a solution that can be bought costs what it is sold for; of what nobody sells, the source is to be entered', () => {
  const sold = { ...OFFER, id: 'o2', product: 's', pack: '1 L', price: '5.00' };
  expect(priced([OFFER, sold]).costs).toEqual([14_400, 25_000, 14_400]);
  const { shop, costs } = priced([]);
  expect(costs).toEqual([null, null, null]);
  const working = recipeWorking(shop, ['of weak', 'line', '0', 'cost']);
  expect(working?.value).toEqual({ kind: 'unknown', because: 'Enter an offer for Product fe, with its price.' });
});

test('a mix with a stock solution costs at the cheapest offers what one with its source does, and its working says so', () => {
  const { shop } = priced([OFFER]);
  const offered = (id: string) => {
    const asked = readMixQuery([
      ['recipe', id],
      ['volume', '10 L'],
    ]);
    const mix = asked.ok ? askedMix(shop, instantOf(Date.UTC(2026, 2, 3, 21)), asked.value, '') : asked;
    if (!mix.ok) throw new Error(mix.message);
    return { ...offerCostOf(shop, mix.value.sheet), working: offerLineWorking(mix.value, 0) };
  };
  // 3.6 g at 0.04 a gram.
  expect(['of powder', 'of solution', 'of weak'].map((id) => offered(id).material)).toEqual([
    144_000, 144_000, 144_000,
  ]);
  expect(offered('of solution').working?.steps.map(({ label }) => label)).toEqual([
    'Amount',
    'Product fe in each litre of it',
    'A pack of 500 g of Product fe',
  ]);
});
