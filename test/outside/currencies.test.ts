import { expect, test } from 'vitest';
import { coinPlaces } from '@/shared/measure/coin-places';

/*
 * Minor units of currencies by ISO 4217. Two readings of it: the npm package currency-codes 2.2.0, published 2024-06-25 (seen),
 * and, for what is not money of a country that lets its small coins go, the Unicode CLDR as the runtime has it.
 */

const ISO: Record<string, string> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
  2: 'ALL AFN AUD BRL CAD CHF CNY COP CZK DKK EUR GBP HUF IDR INR IRR KPW LAK LBP MGA MMK MXN NOK NZD PKR PLN RON SEK SOS SYP TRY TWD USD YER ZAR',
  3: 'BHD IQD JOD KWD LYD OMR TND',
  4: 'CLF UYW',
};

test.each(Object.entries(ISO))('%s decimals by ISO 4217 (seen)', (places, codes) => {
  expect(codes.split(' ').filter((code) => coinPlaces(code) !== Number(places))).toEqual([]);
});

test('the Unicode CLDR never has more decimals, and fewer only where small coins went out of use (seen in this runtime)', () => {
  const cldr = (currency: string) =>
    new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
  const all = Intl.supportedValuesOf('currency');
  expect(all.filter((code) => cldr(code) > coinPlaces(code))).toEqual([]);
  const fewer = all.filter((code) => cldr(code) < coinPlaces(code));
  const outOfUse = 'AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SLL SOS SYP YER'.split(' ');
  // Newer and older data differ by some of these, and by currencies that are no money any more.
  expect(outOfUse.filter((code) => coinPlaces(code) < 2)).toEqual([]);
  const money = new Set(Object.values(ISO).flatMap((codes) => codes.split(' ')));
  expect(fewer.filter((code) => money.has(code) && !outOfUse.includes(code))).toEqual([]);
});
