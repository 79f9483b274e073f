import { expect, test } from 'vitest';
import { classifiedModes, publishedModes } from '@/lib/engine/rotation/published-modes';
import { modeRepeated } from '@/lib/engine/rules/mode-repeated';
import type { Content, ProductKind } from '@/lib/engine/shop';
import { once, planOf, product, recipe } from '../lib/engine/rules/small-shop';

/*
 * Mode-of-action groups against what is published. `seen` was read in a copy of the source; `memory` was recalled and not
 * looked up again. Names are those of active ingredients, codes those of FRAC and IRAC.
 */

type Published = { source: string; basis: 'seen' | 'memory'; kind: ProductKind; groups: Record<string, string> };

const PUBLISHED: Published[] = [
  {
    source:
      'R01 to R20, UC IPM Floriculture and Ornamental Nurseries, "General Properties of Fungicides", www2.ipm.ucanr.edu/agriculture/floriculture-and-ornamental-nurseries/General-Properties-of-Fungicides/',
    basis: 'seen',
    kind: 'fungicide',
    groups: {
      ...{ azoxystrobin: '11', captan: 'M04', chlorothalonil: 'M05', cyazofamid: '21', dimethomorph: '40' },
      ...{ etridiazole: '14', fenhexamid: '17', 'copper (fixed)': 'M01', fludioxonil: '12', fluopicolide: '43' },
      ...{ flutolanil: '7', iprodione: '2', 'lime sulfur': 'M02', mancozeb: 'M03', mandipropamid: '40' },
      ...{ mefenoxam: '4', myclobutanil: '3', fluoxastrobin: '11', 'neem oil': 'NC' },
    },
  },
  {
    source:
      'R21, UC IPM Apple, "Fungicide Efficacy: Biocontrols and Natural Products", ipm.ucanr.edu/agriculture/apple/fungicide-efficacybiocontrols-and-natural-products',
    basis: 'seen',
    kind: 'fungicide',
    groups: { 'Bacillus subtilis': 'BM02', copper: 'M01', sulfur: 'M02', 'Reynoutria sachalinensis': 'P05' },
  },
  {
    source:
      'R22 to R30, UC IPM Floriculture and Ornamental Nurseries, "Relative Toxicities of Pesticides", ipm.ucanr.edu/agriculture/floriculture/relative-toxicities-of-pesticides-used-in-floriculture-and-nurseries-to-natural-enemies-and-honey-bees/',
    basis: 'seen',
    kind: 'insecticide',
    groups: {
      ...{ abamectin: '6', acephate: '1B', acetamiprid: '4A', 'Bacillus thuringiensis': '11A', bifenazate: '20D' },
      ...{ bifenthrin: '3A', borate: '8D', buprofezin: '16', carbaryl: '1A' },
    },
  },
  {
    source: 'R31, UF/IFAS EDIS IN1379, edis.ifas.ufl.edu/publication/IN1379',
    basis: 'seen',
    kind: 'insecticide',
    groups: { imidacloprid: '4A', thiamethoxam: '4A', sulfoxaflor: '4C', flupyradifurone: '4D' },
  },
  {
    source: 'R32 to R50, IRAC Mode of Action Classification 10 and 11',
    basis: 'memory',
    kind: 'insecticide/miticide',
    groups: {
      ...{ azadirachtin: 'UN', pyrethrins: '3A', spinosad: '5', spirotetramat: '23', spiromesifen: '23' },
      ...{ 'neem oil': 'UNE', pymetrozine: '9B', flonicamid: '29', pyriproxyfen: '7C', hexythiazox: '10A' },
      ...{ etoxazole: '10B', cyantraniliprole: '28', chlorantraniliprole: '28', cyromazine: '17', tebufenozide: '18' },
      ...{ fenpyroximate: '21A', sulfur: 'UN', 'mineral oil': 'UNM', 'Beauveria bassiana': 'UNF' },
    },
  },
  {
    source: 'R51 to R63, FRAC Code List 2020 to 2024',
    basis: 'memory',
    kind: 'fungicide',
    groups: {
      ...{
        'thiophanate-methyl': '1',
        'fosetyl-Al': 'P07',
        'phosphorous acid salts': 'P07',
        'potassium bicarbonate': 'NC',
      },
      ...{ sulfur: 'M02', propiconazole: '3', tebuconazole: '3', pyraclostrobin: '11', trifloxystrobin: '11' },
      ...{ boscalid: '7', cyprodinil: '9', 'polyoxin D': '19', triforine: '3' },
    },
  },
];

const holding = (...substances: string[]): Content[] =>
  substances.map((substance) => ({ substance, amount: 10, basis: '% w/w' }));

test.each(PUBLISHED)('$source ($basis)', ({ kind, groups }) => {
  const scheme = kind === 'fungicide' ? 'FRAC' : 'IRAC';
  const ours = Object.keys(groups).map((name) => [name, publishedModes({ kind, contents: holding(name) })]);
  expect(ours).toEqual(Object.entries(groups).map(([name, code]) => [name, [`${scheme} ${code}`]]));
});

test('R20 (seen, as R01): two actives in one product bring both groups', () => {
  expect(publishedModes({ kind: 'fungicide', contents: holding('cyprodinil', 'fludioxonil') })).toEqual([
    'FRAC 9',
    'FRAC 12',
  ]);
  expect(publishedModes({ kind: 'fungicide', contents: holding('boscalid', 'pyraclostrobin') })).toEqual([
    'FRAC 7',
    'FRAC 11',
  ]);
});

test('one substance has a group in each scheme, by what the product is for', () => {
  expect(publishedModes({ kind: 'fungicide', contents: holding('sulfur') })).toEqual(['FRAC M02']);
  expect(publishedModes({ kind: 'miticide', contents: holding('sulfur') })).toEqual(['IRAC UN']);
  expect(publishedModes({ kind: 'nutrient', contents: holding('sulfur') })).toEqual([]);
  expect(classifiedModes({ kind: 'miticide', contents: holding('sulfur') })).toEqual([]);
});

const inTurn = (most: number, ...modes: string[][]) => {
  const names = modes.map((_, at) => `p${at}`);
  return modeRepeated(
    planOf({
      settings: { sameModeInARow: most },
      products: names.map((id, at) => product(id, { modes: modes[at] })),
      recipes: names.map((id) => recipe(id, id)),
      programs: names.map((id, at) => once(`g${at}`, `2026-03-0${at + 2}`, { recipes: [id] })),
    }),
  ).map(({ program }) => program);
};

test('R67 (seen, from a fault report): a product of M05 and 1 counts as group 1, and not as 11', () => {
  expect(inTurn(1, ['FRAC M05', 'FRAC 1'], ['FRAC 1'])).toEqual(['g1']);
  // M05 is multi-site, which FRAC lets anybody repeat.
  expect(inTurn(1, ['FRAC M05', 'FRAC 1'], ['FRAC M05'])).toEqual([]);
  expect(inTurn(1, ['FRAC M05', 'FRAC 1'], ['FRAC 11'])).toEqual([]);
});

test('R64 (seen, UC IPM Apple, as R21, note 1): a group of high risk once, any other twice in a row', () => {
  expect(inTurn(2, ['FRAC 3'], ['FRAC 3'])).toEqual([]);
  expect(inTurn(2, ['FRAC 3'], ['FRAC 3'], ['FRAC 3'])).toEqual(['g2']);
  expect(inTurn(2, ['FRAC 11'], ['FRAC 11'])).toEqual(['g1']);
  expect(inTurn(2, ['FRAC 11'], ['FRAC 3'], ['FRAC 11'])).toEqual([]);
});

test('IRAC Mode of Action Classification 7.3, note e (seen in a copy): 8, 13 and UN may be rotated freely', () => {
  for (const group of ['IRAC 8D', 'IRAC 13', 'IRAC UN']) expect(inTurn(1, [group], [group], [group])).toEqual([]);
  for (const group of ['IRAC 6', 'IRAC 23']) expect(inTurn(1, [group], [group])).toEqual(['g1']);
});

test('IRAC 10 and 11 (memory): UNB to UNV are of unknown mode; 4A, 4C and 4D, as 3A and 3B, share a target', () => {
  for (const letter of 'BEFMPV') expect(inTurn(1, [`IRAC UN${letter}`], [`IRAC UN${letter}`])).toEqual([]);
  expect(inTurn(2, ['IRAC 4A'], ['IRAC 4C'], ['IRAC 4D'])).toEqual(['g2']);
  expect(inTurn(1, ['IRAC 3A'], ['IRAC 3B'])).toEqual(['g1']);
  expect(inTurn(1, ['IRAC 4A'], ['IRAC 3A'])).toEqual([]);
});

test('FRAC Code Lists 2018 to 2021 (seen in copies): M is multi-site, U of unknown mode, and 4 of high risk', () => {
  for (const group of ['FRAC M01', 'FRAC M2', 'FRAC U06', 'FRAC BM02']) {
    expect(inTurn(1, [group], [group], [group])).toEqual([]);
  }
  expect(inTurn(2, ['FRAC 4'], ['FRAC 4'])).toEqual(['g1']);
  // Medium by the same list.
  expect(inTurn(2, ['FRAC 8'], ['FRAC 8'])).toEqual([]);
});

test('FRAC Code Lists 2020 to 2024 (memory): 1, 10, 11, 25 and 41 are of high risk; 2 and 7 are not, nor is IRAC 11', () => {
  for (const code of [1, 10, 11, 25, 41]) expect(inTurn(9, [`FRAC ${code}`], [`FRAC ${code}`])).toEqual(['g1']);
  for (const code of [2, 3, 5, 7, 9, 12, 17, 40]) expect(inTurn(2, [`FRAC ${code}`], [`FRAC ${code}`])).toEqual([]);
  expect(inTurn(2, ['IRAC 11A'], ['IRAC 11A'])).toEqual([]);
});
