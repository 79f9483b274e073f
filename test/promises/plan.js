/**
 * What this program promises when something breaks, each with the bar that it is held to. `npm run test:long` prints the
 * figure that each of them reached.
 *
 * `waitsFor` names what the program does not have yet, without which the promise cannot be tried.
 *
 * @type {{ number: number, title: string, bar: string, waitsFor?: string }[]}
 */
export const PROMISES = [
  { number: 1, title: 'killed while writing', bar: '0 acknowledged lost, 0 half, 0 double' },
  { number: 2, title: 'power cut', bar: '0 acknowledged lost' },
  { number: 3, title: 'how the database is opened', bar: '4 of 4 settings' },
  { number: 4, title: 'a write beside one that is rolled back', bar: '0 vanished, 0 dirty reads' },
  { number: 5, title: 'stock is conserved', bar: 'in hand = sum of movements, never below 0' },
  { number: 6, title: 'a command sent again', bar: 'one effect each, same answer; another body refused' },
  { number: 7, title: 'two tabs finish one mix', bar: 'exactly one record each' },
  { number: 8, title: 'overdraw', bar: 'exactly 71 of 300 draws, the rest refused' },
  { number: 9, title: 'lost races on PostgreSQL', bar: 'at most 5 tries, 0 double', waitsFor: 'PostgreSQL' },
  { number: 10, title: 'the file is held by another program', bar: 'no answer later than 3 s, recovers' },
  { number: 11, title: 'a second server on one file', bar: 'refused' },
  { number: 12, title: 'full disk', bar: 'the cause is said, reads go on, recovers' },
  { number: 13, title: 'read-only, missing or mistyped file', bar: 'the cause is said, no new file' },
  { number: 14, title: 'damaged file', bar: 'every damage found, KEEP OUT' },
  { number: 15, title: 'a record changed behind the program', bar: 'every change found and named' },
  { number: 16, title: 'backup while writing', bar: '20 of 20 whole' },
  { number: 17, title: 'restore drill', bar: 'under 5 minutes, equal counts and hashes' },
  { number: 18, title: 'a migration that is killed', bar: 'old or new, never between' },
  { number: 19, title: 'odd numbers in every field', bar: 'refused or exact' },
  { number: 20, title: 'SQLite and PostgreSQL agree', bar: 'equal state and refusals', waitsFor: 'PostgreSQL' },
  { number: 21, title: 'malformed requests', bar: '0 answers of 500, 0 rows changed, no growth' },
  { number: 22, title: 'who may do what', bar: 'every action, route and page as the table says' },
  { number: 23, title: 'actions away from their page', bar: '0 executed' },
  { number: 24, title: 'foreign host and origin', bar: '0 executed' },
  { number: 25, title: 'ways around the front', bar: '0 bytes of a shop' },
  { number: 26, title: 'headers and content policy', bar: 'a fresh nonce each, 0 violations' },
  { number: 27, title: 'sessions', bar: 'an ended session is dead at once' },
  { number: 28, title: 'guessing passwords', bar: 'at most 5 tries in 15 minutes' },
  { number: 29, title: 'hostile texts', bar: '0 formulas, calendar whole, 0 scripts run' },
  { number: 30, title: 'uploads', bar: 'refused, nothing kept' },
  { number: 31, title: 'benches against an independent model', bar: '0 open early' },
  { number: 32, title: 'unknown in every field of the board', bar: 'KEEP OUT every time' },
  { number: 33, title: 'clock changes of zones', bar: '0 minutes wrong' },
  { number: 34, title: 'a wrong clock', bar: 'KEEP OUT until confirmed' },
  { number: 35, title: 'a stale page', bar: 'KEEP OUT within 60 s' },
  { number: 36, title: 'records are amended, never changed', bar: 'every version kept' },
  { number: 37, title: 'load', bar: '0 errors' },
  { number: 38, title: 'an hour’s work in ten minutes', bar: 'memory and log file stay small' },
  { number: 39, title: 'what the program is made of', bar: 'no known high risk, versions at least those needed' },
  { number: 40, title: 'planted faults in ledger and re-entry', bar: '90 % found, all in the board' },
];
