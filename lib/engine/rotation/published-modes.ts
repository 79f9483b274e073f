import type { Product } from '../shop';
import { modeGroupsIn, modesOf } from './mode-group';

/*
 * The mode-of-action groups that are published for active ingredients, to be held against what was typed in from a label.
 * A label's own groups are what every rule counts; these only say that some are missing.
 *
 * Source   UC IPM, General Properties of Fungicides, and Fungicide Efficacy: Biocontrols and Natural Products; UC IPM,
 *          Relative Toxicities of Pesticides; UF/IFAS EDIS IN1379; IRAC Mode of Action Classification 10 and 11; FRAC Code
 *          List 2020 to 2024. Fosetyl and the phosphonates were 33 in lists before 2019, Bacillus 44
 */

const FUNGICIDES: Record<string, string> = {
  azoxystrobin: '11',
  'bacillus amyloliquefaciens': 'BM02',
  'bacillus subtilis': 'BM02',
  boscalid: '7',
  captan: 'M04',
  chlorothalonil: 'M05',
  copper: 'M01',
  cyazofamid: '21',
  cyprodinil: '9',
  dimethomorph: '40',
  etridiazole: '14',
  fenhexamid: '17',
  fludioxonil: '12',
  fluopicolide: '43',
  fluoxastrobin: '11',
  flutolanil: '7',
  fosetyl: 'P07',
  iprodione: '2',
  mancozeb: 'M03',
  mandipropamid: '40',
  mefenoxam: '4',
  myclobutanil: '3',
  'neem oil': 'NC',
  'phosphorous acid': 'P07',
  'polyoxin d': '19',
  'potassium bicarbonate': 'NC',
  propiconazole: '3',
  pyraclostrobin: '11',
  reynoutria: 'P05',
  /** Lime sulfur, too. */
  sulfur: 'M02',
  tebuconazole: '3',
  'thiophanate-methyl': '1',
  trifloxystrobin: '11',
  triforine: '3',
};

const INSECTICIDES: Record<string, string> = {
  abamectin: '6',
  acephate: '1B',
  acetamiprid: '4A',
  azadirachtin: 'UN',
  'bacillus thuringiensis': '11A',
  'beauveria bassiana': 'UNF',
  bifenazate: '20D',
  bifenthrin: '3A',
  borate: '8D',
  buprofezin: '16',
  carbaryl: '1A',
  chlorantraniliprole: '28',
  cyantraniliprole: '28',
  cyromazine: '17',
  etoxazole: '10B',
  fenpyroximate: '21A',
  flonicamid: '29',
  flupyradifurone: '4D',
  hexythiazox: '10A',
  imidacloprid: '4A',
  'mineral oil': 'UNM',
  'neem oil': 'UNE',
  pymetrozine: '9B',
  pyrethrins: '3A',
  pyriproxyfen: '7C',
  spinosad: '5',
  spiromesifen: '23',
  spirotetramat: '23',
  sulfoxaflor: '4C',
  sulfur: 'UN',
  tebufenozide: '18',
  thiamethoxam: '4A',
};

const byName = (table: Record<string, string>): [name: RegExp, code: string][] =>
  Object.entries(table).map(([name, code]) => [new RegExp(`\\b${name}\\b`, 'i'), code]);

const SCHEMES = [
  { scheme: 'FRAC', kinds: ['fungicide'], table: byName(FUNGICIDES) },
  { scheme: 'IRAC', kinds: ['insecticide', 'miticide', 'insecticide/miticide'], table: byName(INSECTICIDES) },
];

/**
 * The groups published for what a product holds, in the scheme of its kind.
 *
 * Gives   each once, such as "FRAC 11", in the order of its contents; none for a substance that is not in the tables, and
 *         none for a product that is neither against disease nor against insects or mites
 */
export function publishedModes({ kind, contents }: Pick<Product, 'kind' | 'contents'>): string[] {
  const modes = SCHEMES.filter(({ kinds }) => kinds.includes(kind)).flatMap(({ scheme, table }) =>
    contents.flatMap(({ substance }) => {
      const found = table.find(([name]) => name.test(substance));
      return found ? [`${scheme} ${found[1]}`] : [];
    }),
  );
  return [...new Set(modes)];
}

/** The same without what is not classified, or of unknown action: resistance to it is not shared, and few labels name it. */
export const classifiedModes = (product: Pick<Product, 'kind' | 'contents'>): string[] =>
  publishedModes(product).filter((mode) =>
    modeGroupsIn(mode, product.kind).some(({ standing }) => standing !== 'unknown'),
  );

/** What is published for a product whose label names no group, so that what it does in a row is not counted. */
export const modesMissing = (product: Product): string[] =>
  modesOf(product).length > 0 ? [] : classifiedModes(product);
