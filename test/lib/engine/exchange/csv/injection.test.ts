import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { canonical } from '@/lib/engine/exchange/canonical';
import { CSV_LISTS } from '@/lib/engine/exchange/csv/column';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parsedOrThrow } from '../../../data/any-shop-file';
import { exported, planned } from './planned';

const BEGINNINGS = ['=', '+', '-', '@', "'=", "''@", '＝', '"=', ';=', ',', "'", '|', '%'];
const ENDINGS = [
  '1+1',
  'cmd|" /C calc"!A0',
  'HYPERLINK("http://127.0.0.1","x")',
  'a;b',
  'a"b";"c',
  'a: up to 5 mL/gal:',
  'a, b',
  '2,4-D',
];
const NASTY = [...BEGINNINGS.flatMap((first) => ENDINGS.map((rest) => `${first}${rest}`.trim())), '-', '=', '+', "'"];

/** A shop in which every text that a person may choose is this one. */
function shopOf(text: string): ShopFile {
  const id = [...text].slice(0, 60).join('');
  const file = {
    format: 'bench-and-bottle/shop@1',
    shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
    suppliers: [{ id, name: text }],
    products: [
      {
        ...{ id, name: text, kind: 'other', form: 'liquid', formulation: text },
        contents: [
          { substance: text, amount: 2.5, basis: '% w/w' },
          { substance: `a ${text}`, amount: 1e-7, basis: 'g/L' },
        ],
        label: {
          rates: [
            { use: text, min: '1 mL/L', max: '3 mL/L' },
            { use: text, max: '3 mL/L' },
            { use: text, min: '1 mL/L' },
            { use: text },
          ],
          ...{
            modes: [text, text],
            signalWord: text,
            protectiveEquipment: [text],
            doNotMixWith: [text, 'x'],
            registration: text,
          },
        },
      },
    ],
    offers: [{ id, supplier: id, product: id, pack: '1 qt', price: '40.00', breaks: [{ atLeast: 4, price: '39.00' }] }],
    lots: [{ id, product: id, pack: '1 qt', receivedOn: '2026-02-02', keptIn: text }],
  };
  return canonical(parsedOrThrow(file));
}

test('nasty texts go out without a formula cell, and come in again as they were', () => {
  expect(NASTY.length).toBeGreaterThan(100);
  for (const text of NASTY) comesBack(text);
});

test('whatever the text is, it comes back', () => {
  const text = fc.string({ unit: fc.constantFrom(...'=+-@\';:"|, ab%1é\\'), minLength: 1, maxLength: 30 });
  const kept = text.map((each) => each.trim()).filter((each) => each !== '');
  fc.assert(fc.property(kept, comesBack), { numRuns: 60 });
});

function comesBack(text: string) {
  const shop = shopOf(text);
  for (const list of CSV_LISTS) {
    const out = exported(shop, list);
    const cells: string[] = parse(out).flat();
    expect(cells.filter((cell) => /^[=+\-@\t\r\n＝＋－＠]/.test(cell))).toEqual([]);
    const { faults, result } = planned(shop, list, out);
    expect({ list, text, faults }).toEqual({ list, text, faults: [] });
    expect(result?.file[list]).toEqual(shop[list]);
  }
}
