import { type Fault, inFile } from './fault';

export const QUANTITIES: Fault[] = [
  ...inFile(
    'shared/measure/unit.ts',
    ['US gallon', "exact('3785411.784')", "exact('3785000')"],
    [
      'quart',
      "{ name: 'qt', kind: 'volume', worth: of(GALLON, 1n, 4n) }",
      "{ name: 'qt', kind: 'volume', worth: of(GALLON, 1n, 5n) }",
    ],
    [
      'pint',
      "{ name: 'pt', kind: 'volume', worth: of(GALLON, 1n, 8n) }",
      "{ name: 'pt', kind: 'volume', worth: of(GALLON, 1n, 4n) }",
    ],
    ['fluid ounce', 'worth: of(GALLON, 1n, 128n)', 'worth: of(GALLON, 1n, 160n)'],
    ['cup', 'of(FLUID_OUNCE, 8n, 1n)', 'of(FLUID_OUNCE, 10n, 1n)'],
    ['tablespoon', 'of(FLUID_OUNCE, 1n, 2n)', 'of(FLUID_OUNCE, 2n, 3n)'],
    ['teaspoon', 'of(FLUID_OUNCE, 1n, 6n)', 'of(FLUID_OUNCE, 1n, 8n)'],
    ['drop', "USUAL_DROP: Exact = exact('50')", "USUAL_DROP: Exact = exact('65')"],
    ['imperial gallon', "exact('4546090')", "exact('4546000')"],
    ['avoirdupois pound', "exact('453592.37')", "exact('453600')"],
    ['avoirdupois ounce', 'worth: of(POUND, 1n, 16n)', 'worth: of(POUND, 1n, 12n)'],
  ),
  ...inFile(
    'shared/measure/area.ts',
    ['square foot', "exact('0.09290304')", "exact('0.0929')"],
    ['acre', 'exact(43_560n)', 'exact(43_650n)'],
    ['square yard', 'multiply(SQUARE_FOOT, exact(9n))', 'multiply(SQUARE_FOOT, exact(3n))'],
    ['hectare', "[exact(10_000n), ['ha'", "[exact(1_000n), ['ha'"],
  ),
  ...inFile(
    'shared/measure/size.ts',
    [
      'weight of a liquid',
      'divide(size.milligrams, exact(product.densityGPerMl))',
      'multiply(size.milligrams, exact(product.densityGPerMl))',
    ],
    [
      'spoon of a powder as stock',
      'divide(size.microlitres, TEASPOON.worth)',
      'divide(size.microlitres, exact(5000n))',
    ],
  ),
  ...inFile(
    'shared/quantity/rounding.ts',
    ['halves away from zero', '2n * away * over + under, 2n * under', '2n * away * over, 2n * under'],
    ['up to a whole one', 'whole<T>(-floorDivide(-over, under))', 'whole<T>(floorDivide(over, under))'],
    ['shares by value', 'a.lost > b.lost ? -1 : 1', 'a.lost > b.lost ? 1 : -1'],
    ['equal shares', 'place < left ? 1 : 0', 'place < left ? 0 : 0'],
  ),
];

export const DOSES: Fault[] = [
  ...inFile(
    'shared/measure/dose.ts',
    ['percent as a dose', 'const TEN = exact(10n)', 'const TEN = exact(1n)'],
    [
      'dose per volume',
      'unit.ok ? unit.value.worth : ZERO), exact(1000000n)',
      'unit.ok ? unit.value.worth : ZERO), exact(1000100n)',
    ],
    ['dose per area', "{ per: 'area', amount: multiply(number, area) }", "{ per: 'area', amount: area }"],
  ),
  ...inFile(
    'lib/engine/strength/dose-in-stock.ts',
    ['dose by the spoon', 'divide(TEASPOON.worth, THOUSAND)', 'exact(5n)'],
    ['dose by weight of a liquid', 'divide(grams, exact(densityGPerMl))', 'grams'],
    ['ppm of a substance', 'divide(divide(mgPerLitre, THOUSAND), strength)', 'divide(mgPerLitre, THOUSAND)'],
    ['dose per area in a spray', 'divide(multiply(perSquareMetre, area), sprayMl)', 'divide(perSquareMetre, sprayMl)'],
  ),
  ...inFile(
    'lib/engine/strength/strength-of.ts',
    [
      '% w/v',
      "case '% w/v':\n      return multiply(exact(amount), fraction(1n, 100n))",
      "case '% w/v':\n      return multiply(exact(amount), fraction(1n, 1000n))",
    ],
    [
      'g/L',
      "case 'g/L':\n      return multiply(exact(amount), fraction(1n, 1000n))",
      "case 'g/L':\n      return multiply(exact(amount), fraction(1n, 100n))",
    ],
    ['lb/gal', "exact('3785.411784')", "exact('4546.09')"],
    ['% w/w of a liquid', 'multiply(exact(densityGPerMl), fraction(1n, 100n))', 'fraction(1n, 100n)'],
    ['g/kg of a liquid', 'multiply(exact(densityGPerMl), fraction(1n, 1000n))', 'fraction(1n, 1000n)'],
    [
      '% w/w of a powder',
      "content.basis === '% w/w') return multiply(exact(content.amount), fraction(1n, 100n))",
      "content.basis === '% w/w') return multiply(exact(content.amount), fraction(1n, 90n))",
    ],
    [
      'g/kg of a powder',
      "content.basis === 'g/kg') return multiply(exact(content.amount), fraction(1n, 1000n))",
      "content.basis === 'g/kg') return multiply(exact(content.amount), fraction(1n, 100n))",
    ],
    ['unknown strength', "case '% v/v':\n      return null", "case '% v/v':\n      return fraction(1n, 100n)"],
  ),
  ...inFile(
    'lib/engine/strength/equivalent-dose.ts',
    ['equal dose', 'divide(multiply(rate, here), there)', 'divide(multiply(rate, there), here)'],
    ['strength of a spray', 'multiply(multiply(rate, strength), exact(1000n))', 'multiply(rate, strength)'],
  ),
  ...inFile('lib/engine/mix/stock-solution-of.ts', [
    'strength of a stock solution',
    'multiply(multiply(strength, part), THOUSAND)',
    'multiply(strength, part)',
  ]),
];

export const BENCHES: Fault[] = [
  ...inFile(
    'lib/engine/bench/spray-volume.ts',
    [
      'spray of a bench',
      'multiply(exact(count), exact(mlPerPlant)), exact(bench.coverage)',
      'multiply(exact(count), exact(mlPerPlant)), exact(1)',
    ],
    ['number of fills', 'subtract(sprayer.capacity, sprayer.lossPerFill)', 'sprayer.capacity'],
    ['loss in each fill', 'add(divide(onPlants, exact(fills)), sprayer.lossPerFill)', 'divide(onPlants, exact(fills))'],
    ['equal fills', 'divide(onPlants, exact(fills)), sprayer', 'onPlants, sprayer'],
    ['measuring step', 'stepUp(each, sprayer.measuringStep)', 'each'],
    ['spray of all fills', 'total: multiply(exact(fills), fill)', 'total: onPlants'],
  ),
  ...inFile(
    'lib/engine/bench/spray-per-plant.ts',
    ['mL per plant by trial', 'divide(subtract(putInMl, leftMl), exact(plants))', 'divide(putInMl, exact(plants))'],
    ['mL per plant by leaves', '* sides * retention.mlPerSquareMetre', '* retention.mlPerSquareMetre'],
    ['staggered plants', '2 / Math.sqrt(3)', 'Math.sqrt(3) / 2'],
    [
      'mL per plant by ground',
      'perSquareMetre / plantsPerSquareMetre(spacingCm, standing)',
      'perSquareMetre * plantsPerSquareMetre(spacingCm, standing)',
    ],
  ),
  ...inFile(
    'lib/engine/ahead/sprayings.ts',
    [
      'amount of an ingredient',
      "const units = dose.kind === 'perArea' ? area : sprayMl",
      "const units = dose.kind === 'perArea' ? sprayMl : sprayMl",
    ],
    [
      'labour',
      'ofEach(shop.wagePerHour, program.duration, minutesOf(60))',
      'ofEach(shop.wagePerHour, program.duration, minutesOf(100))',
    ],
    ['end of a spraying', 'addMinutes(startsAt, program.duration)', 'startsAt'],
  ),
  ...inFile(
    'lib/engine/mix/measuring.ts',
    [
      'measuring error',
      'const error = divide(subtract(amount, wanted.amount), wanted.amount);\n  return [{ measure',
      'const error = divide(subtract(amount, wanted.amount), amount);\n  return [{ measure',
    ],
    ['5 % of measuring error', "TOLERANCE = exact('0.05')", "TOLERANCE = exact('0.1')"],
    ['nearest mark below', 'multiply(exact(BigInt(wholeDown(divide(value, step)))), step)', 'value'],
  ),
  ...inFile('lib/engine/mix/measurable-batch.ts', [
    'a batch that can be measured',
    'stepUp(divide(multiply(batchMl, next), reach), exact(1n))',
    'stepUp(batchMl, exact(1n))',
  ]),
];
