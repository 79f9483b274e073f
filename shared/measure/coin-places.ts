/*
 * How many decimals the coins of a currency have, where it is not two.
 *
 * Source   ISO 4217, list one (minor unit), as published 2024-06-25; read in the npm package currency-codes 2.2.0. What a
 *          browser rounds to is another matter: it counts HUF, IDR, PKR and some thirty others as if they had no coins.
 *          Codes without a minor unit (metals, funds, tests) are shown with two.
 */
const PLACES: Record<number, string> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF',
  3: 'BHD IQD JOD KWD LYD OMR TND',
  4: 'CLF UYW',
};

const places: ReadonlyMap<string, number> = new Map(
  Object.entries(PLACES).flatMap(([count, codes]) => codes.split(' ').map((code) => [code, Number(count)] as const)),
);

/** How many decimals the coins of a currency have: two in dollars, none in yen, three in dinars of Kuwait. */
export const coinPlaces = (currency: string): number => places.get(currency) ?? 2;
