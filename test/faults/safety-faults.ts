import { type Fault, inFile } from './fault';

export const SAFETY: Fault[] = [
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
      'unknown keeps out',
      'records.filter(({ reopensAt }) => reopensAt === null)',
      'records.filter(({ reopensAt }) => reopensAt === undefined)',
    ],
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
  ...inFile(
    'lib/engine/rotation/mode-schemes.ts',
    ['groups of high risk', '/^(1|4|10|11|25|41)$/', '/^(1|4|10|25|41)$/'],
    ['groups without a common target', "[/^(8|13)$/, 'several targets']", "[/^(8)$/, 'several targets']"],
    ['multi-site groups', "[/^(M|BM)\\d*$/, 'several targets']", "[/^(BM)\\d*$/, 'several targets']"],
  ),
  ...inFile('lib/engine/rotation/mode-group.ts', [
    'sub-groups',
    'return { group: String(numbered[1]), code',
    'return { group: code, code',
  ]),
  ...inFile('lib/engine/ahead/stock-walk.ts', ['an amount that is unknown', 'week.need = null;', 'week.need = NONE;']),
];
