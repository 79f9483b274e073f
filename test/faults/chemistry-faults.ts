import { type Fault, inFile } from './fault';

export const CHEMISTRY: Fault[] = [
  ...inFile(
    'lib/engine/strength/elements.ts',
    ['P2O5 to P', "exact('0.43642')", "exact('0.44')"],
    ['K2O to K', "exact('0.83015')", "exact('0.82')"],
    ['SiO2 to Si', "exact('0.46744')", "exact('0.53')"],
    ['CaO to Ca', "exact('0.71470')", "exact('0.73')"],
    ['MgO to Mg', "exact('0.60304')", "exact('0.62')"],
  ),
  ...inFile(
    'lib/engine/mix/water.ts',
    ['first constant of carbonate', 'const PK1 = 6.352', 'const PK1 = 6.5'],
    ['second constant of carbonate', 'const PK2 = 10.329', 'const PK2 = 10.0'],
    ['ion product of water', 'const PKW = 13.995', 'const PKW = 13.7'],
    ['alkalinity as CaCO3', '100.087 / 2', '100.087'],
    [
      'alkalinity left at a pH',
      'silica.least * silicateShare(pH) + hydroxideAt(pH)',
      'silica.least * silicateShare(pH)',
    ],
    ['constant of silicic acid', 'const PK_SILICIC = 9.83', 'const PK_SILICIC = 9.5'],
    ['acid needed', 'water.alkalinity - alkalinityAt(water, target)', 'water.alkalinity'],
  ),
  ...inFile(
    'lib/engine/mix/acids.ts',
    ['phosphoric acid', 'pKas: [2.148, 7.198, 12.35]', 'pKas: [2.148, 6.9, 12.35]'],
    ['citric acid', 'pKas: [3.128, 4.761, 6.396]', 'pKas: [3.128, 4.761, 6.7]'],
    ['acetic acid', 'pKas: [4.756]', 'pKas: [4.5]'],
    ['lactic acid', 'pKas: [3.86]', 'pKas: [4.1]'],
    ['sulfuric acid', "always: 2, pKas: [], brings: { element: 'S'", "always: 1, pKas: [], brings: { element: 'S'"],
    ['molar mass of nitric acid', 'molarMass: 63.012', 'molarMass: 62.004'],
    ['molar mass of hydrochloric acid', 'molarMass: 36.458', 'molarMass: 35.45'],
    ['molar mass of acetic acid', 'molarMass: 60.052', 'molarMass: 59.04'],
    ['protons given off', 'sum + share * lost, acid.always', 'sum + share, acid.always'],
  ),
  ...inFile(
    'lib/engine/mix/acid-doses.ts',
    ['dose of an acid', 'meqPerL / acidity(target)', 'meqPerL / acidity(7)'],
    ['two thirds first', 'const FIRST_PART = 2 / 3', 'const FIRST_PART = 1 / 3'],
  ),
  ...inFile(
    'lib/engine/mix/alkali.ts',
    ['alkali of a silicate', "name: 'K2O', equivalents: 2", "name: 'K2O', equivalents: 1"],
    [
      'sodium in a silicate',
      "name: 'Na2O', equivalents: 2, molarMass: 61.979",
      "name: 'Na2O', equivalents: 2, molarMass: 94.196",
    ],
  ),
  ...inFile(
    'lib/engine/mix/ions.ts',
    [
      'conductivity',
      'mmol * charge * carrier.perCharge * slowing(charge, strength)',
      'mmol * carrier.perCharge * slowing(charge, strength)',
    ],
    ['ionic strength', 'carrier.charge ** 2 * mmol, 0) / 2000', 'carrier.charge ** 2 * mmol, 0) / 1000'],
  ),
];
