/*
 * Faults to plant, one at a time, in the formulas that everything rests on. Each must turn a check against a published
 * figure red (`npm run test:faults`). A text that is no longer found is an error, so that the list keeps up with the code.
 */

/** Where a fault is planted: the text must stand there once. `formula` is what it breaks, in the words of the trade. */
export type Fault = { formula: string; file: string; find: string; put: string };

type Row = [formula: string, find: string, put: string];

const inFile = (file: string, ...rows: Row[]): Fault[] =>
  rows.map(([formula, find, put]) => ({ formula, file, find, put }));

const QUANTITIES: Fault[] = [
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

const DOSES: Fault[] = [
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

const BENCHES: Fault[] = [
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
      'divide(subtract(amount, wanted.amount), wanted.amount)',
      'divide(subtract(amount, wanted.amount), amount)',
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

const COSTS: Fault[] = [
  ...inFile('lib/engine/ledger/draw-cost.ts', [
    'cost of a draw',
    'ofEach<Micros, Stock>(paid, before, size)',
    'ofEach<Micros, Stock>(paid, minus(before, before), size)',
  ]),
  ...inFile('lib/engine/ledger/account.ts', [
    'what is left of a price',
    'left: costOut(paid, size, gone, size)',
    'left: costOut(paid, size, minus(size, size), size)',
  ]),
  ...inFile(
    'lib/engine/ledger/draw-order.ts',
    ['first expiring first', 'a.lastDay < b.lastDay ? -1 : 1', 'a.lastDay < b.lastDay ? 1 : -1'],
    ['then what is open', 'a.opened ? -1 : 1', 'a.opened ? 1 : -1'],
    ['then what came first', 'a.received - b.received', 'b.received - a.received'],
  ),
  ...inFile(
    'lib/engine/ledger/last-usable-day.ts',
    ['opened life', 'addDays(openedOn, openedDays)', 'addDays(openedOn, openedDays + 1)'],
    ['unopened life', 'addDays(container.receivedOn, unopenedDays)', 'addDays(container.receivedOn, unopenedDays - 1)'],
    [
      'the earlier of both',
      'dayNumber(shut) < dayNumber(opened) ? shut : opened',
      'dayNumber(shut) < dayNumber(opened) ? opened : shut',
    ],
  ),
  ...inFile(
    'lib/engine/ahead/stock-walk.ts',
    ['waste the day after', 'Math.max(lastDay + 1, received, start)', 'Math.max(lastDay, received, start)'],
    ['cost of waste', 'cost: costOf(container, out, plus(out, left))', 'cost: costOf(container, NONE, left)'],
    ['usable stock', 'here.filter(({ lastDay }) => lastDay >= today)', 'here.filter(({ lastDay }) => lastDay >= 0)'],
    ['the day it runs out', 'if (line.short > 0) walk.runsOutOn ??=', 'if (line.short > 0) walk.runsOutOn ='],
    ['what is left of a week', 'plus(week.used, week.wasted)', 'week.used'],
    [
      'life of what is opened on the way',
      'from.lastDay = Math.min(from.lastDay, day +',
      'from.lastDay = Math.max(from.lastDay, day +',
    ],
  ),
  ...inFile(
    'lib/engine/ahead/cheapest-offer.ts',
    ['price per unit', 'divide(exact(offer.price), offer.pack)', 'exact(offer.price)'],
    ['what is short, in money', 'over: BigInt(amount) * over, under', 'over: BigInt(amount), under'],
  ),
  ...inFile(
    'lib/engine/ahead/reorder.ts',
    ['order by', 'addDays(runsOutOn, -safetyDays)', 'runsOutOn'],
    ['weeks until reorder', 'wholeWeeks(daysBetween(today, by))', 'wholeWeeks(daysBetween(today, neededOn))'],
  ),
  ...inFile('shared/quantity/rounding.ts', ['weeks rounded down', 'Math.floor(days / 7)', 'Math.ceil(days / 7)']),
  ...inFile(
    'shared/time/working-days.ts',
    [
      'working days of a lead time',
      'let left = leadDays - weeks * week.perWeek; left > 0',
      'let left = leadDays - weeks * week.perWeek; left > 1',
    ],
    ['whole weeks of a lead time', 'from + direction * 7 * weeks', 'from + direction * 6 * weeks'],
  ),
  ...inFile(
    'lib/engine/mix/mix-sheet.ts',
    [
      'cost per plant and litre',
      'wholeNearest<Micros>(divide(exact(cost), over))',
      'wholeNearest<Micros>(exact(cost))',
    ],
    ['labour of a mix', 'const SIXTY = exact(60n)', 'const SIXTY = exact(100n)'],
  ),
  ...inFile('shared/mix/work-minutes.ts', [
    'minutes of work',
    'multiply(exact(minutesPerPlant), exact(plants))',
    'exact(minutesPerPlant)',
  ]),
  ...inFile('lib/engine/budget/over-benches.ts', [
    'cost over benches',
    'multiply(multiply(exact(count), exact(mlPerPlant)), exact(coverage * 1000))',
    'multiply(exact(count), exact(coverage * 1000))',
  ]),
];

const BUYING: Fault[] = [
  ...inFile('shared/measure/price-break.ts', ['quantity breaks', 'atLeast <= packs', 'atLeast < packs']),
  ...inFile(
    'shared/measure/order-sums.ts',
    ['free freight', 'goods >= freeFreightOver', 'goods > freeFreightOver'],
    ['what an order comes to', 'plus(goods, freight);\n  return', 'goods;\n  return'],
  ),
  ...inFile(
    'lib/engine/buying/pack-use.ts',
    ['days in a year of capital', 'DAYS_PER_YEAR = 365', 'DAYS_PER_YEAR = 360'],
    ['how far a pack reaches', 'const full = opened.covered + pack.size', 'const full = pack.size'],
    ['a pack dies once opened', 'day + pack.openedDays)', 'day + 9_999)'],
    [
      'what is left of the last pack',
      'use.left * horizon.days <= need.whole * keeps',
      'use.left * horizon.days > need.whole * keeps',
    ],
  ),
  ...inFile('lib/engine/buying/orders.ts', ['total of a plan', 'total + (freight ?? 0)', 'total']),
  ...inFile(
    'lib/engine/buying/bought.ts',
    ['goods and capital, less what is left', 'goods + capital - left;', 'goods + capital;'],
    ['waste inside the packs', 'price - ofEach<number, number>(price, pack.size - use.left, pack.size)', 'price'],
  ),
  ...inFile('lib/engine/ahead/replace-cost.ts', [
    'whole packs to replace the shelf',
    'Math.max(1, wholeUp(divide(needed, offer.pack)))',
    '1',
  ]),
  ...inFile(
    'lib/engine/equivalents/equivalents.ts',
    ['cost per gram', 'divide(multiply(price, THOUSAND), strength)', 'multiply(price, THOUSAND)'],
    ['cost per litre', 'multiply(price, multiply(dose.dose, THOUSAND))', 'multiply(price, dose.dose)'],
    ['the cheapest season decides', 'best.season.total <= one.season.total', 'best.season.total >= one.season.total'],
  ),
  ...inFile('lib/engine/equivalents/break-even.ts', [
    'break-even',
    'return (a ?? 0) >= (b ?? 0)',
    'return (a ?? 0) <= (b ?? 0)',
  ]),
];

const SAFETY: Fault[] = [
  ...inFile(
    'lib/engine/keepout/reopening.ts',
    ['longest interval of a mix', 'if (label.rei > longest) longest = label.rei', 'longest = label.rei'],
    [
      'unknown interval',
      'if (label.rei === null || !isInterval(label.rei)) return null',
      'if (label.rei === null || !isInterval(label.rei)) continue',
    ],
    ['interval from the end', 'endedAt + rei * MINUTE', 'startedAt + rei * MINUTE'],
  ),
  ...inFile(
    'lib/engine/keepout/keep-out.ts',
    ['closed until', 'now >= until', 'now > until'],
    [
      'the last of several applications',
      'reopensAt > until)) until = reopensAt',
      'reopensAt < until)) until = reopensAt',
    ],
  ),
  ...inFile('shared/time/hours.ts', [
    'interval in whole minutes, up',
    'wholeUp<Minutes>(multiply(exact(hours), SIXTY))',
    'wholeDown<Minutes>(multiply(exact(hours), SIXTY))',
  ]),
  ...inFile(
    'shared/time/zone-offset.ts',
    ['times that a clock change skips', "disambiguation: 'compatible'", "disambiguation: 'earlier'"],
    ['times that a clock change repeats', "{ disambiguation: 'compatible' }", "{ disambiguation: 'later' }"],
  ),
  ...inFile('lib/engine/keepout/opening-hours.ts', [
    'closed in opening hours',
    'if (span.to > from) return span',
    'if (span.from > from) return span',
  ]),
  ...inFile(
    'lib/engine/rules/too-many-applications.ts',
    ['applications in a year', 'count > most', 'count > most + 1'],
    ['the days of a year', 'const YEAR = 365', 'const YEAR = 364'],
  ),
  ...inFile('lib/engine/rules/too-soon.ts', [
    'days between applications',
    'turn.day - before.day < least',
    'turn.day - before.day <= least',
  ]),
  ...inFile('lib/engine/rules/phi-reaches-harvest.ts', [
    'pre-harvest interval',
    'day + phiDays > harvest',
    'day + phiDays >= harvest',
  ]),
  ...inFile('lib/engine/rules/oil-near-sulfur.ts', [
    'oil and sulfur',
    'turn.day - before.day < least',
    'turn.day - before.day > least',
  ]),
  ...inFile('lib/engine/rules/mixed-too-long.ts', ['use within', 'age > useWithin', 'age >= useWithin']),
  ...inFile('lib/engine/rules/dose-outside-label.ts', [
    'dose above the label',
    'if (aboveMax === 1)',
    'if (aboveMax === -1)',
  ]),
  ...inFile('lib/engine/rules/label-doubts.ts', ['usual intervals', '[/warning/i, 24]', '[/warning/i, 12]']),
  ...inFile(
    'lib/engine/record/retention.ts',
    ['years that records are kept', 'Math.max(years, FEWEST_YEARS)', 'FEWEST_YEARS'],
    ['fewest years that records are kept', 'FEWEST_YEARS = 2', 'FEWEST_YEARS = 1'],
  ),
  ...inFile(
    'lib/engine/record/required.ts',
    ['what a record must hold', "if (endedAt === null) lacks('endedAt', 'The end is unknown: amend the record.')", ''],
    [
      'what a record must hold of a product',
      "if (registration === null) lacks('registration', 'registration number')",
      '',
    ],
  ),
  ...inFile('lib/engine/mix/formulation.ts', [
    'order of mixing',
    "suspension: 'SC F FL SE",
    "suspension: 'EC2 SC2 F2 FL2 SE",
  ]),
  ...inFile('lib/engine/mix/order.ts', [
    'silicates first',
    "stage: 'silicate', assumed: false",
    "stage: 'solution', assumed: false",
  ]),
];

const CHEMISTRY: Fault[] = [
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
    ['alkalinity left at a pH', 'total * chargeAt(pH) + hydroxideAt(pH)', 'total * chargeAt(pH)'],
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

export const FAULTS: readonly Fault[] = [
  ...QUANTITIES,
  ...DOSES,
  ...BENCHES,
  ...COSTS,
  ...BUYING,
  ...SAFETY,
  ...CHEMISTRY,
];
