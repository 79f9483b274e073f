/*
 * What Prisma's schema cannot say, written into the SQL of a migration.
 */

/** Tables that only grow: their rows are facts, corrected by a further row and never changed. */
export const APPEND_ONLY = [
  'Command',
  'Price',
  'PriceBreak',
  'Movement',
  'ContainerChange',
  'RecipeVersion',
  'Ingredient',
  'SprayingChange',
  'Application',
  'ApplicationVersion',
  'ApplicationBench',
  'ApplicationProduct',
  'AmendmentConfirmation',
  'EarlierOpening',
  'UnderWay',
  'RecordSeal',
  'SafetySheet',
  'SafetySheetChange',
  'AlertSent',
  'ClockConfirmation',
  'AccessNote',
];

/**
 * A migration script with the guards of the tables it makes: a CHECK on every whole number and every day, and triggers
 * that refuse UPDATE and DELETE on tables that only grow.
 *
 * Takes    the script as Prisma writes it. A table that Prisma makes anew under the name new_X is guarded as X
 */
export function guarded(script) {
  const made = [];
  const checked = script.replace(/CREATE TABLE "(?:new_)?(\w+)" \(([\s\S]*?)\n\);/g, (whole, table, body) => {
    made.push(table);
    return whole.replace(body, () => withChecks(table, body));
  });
  const added = checked.replace(
    /(ALTER TABLE "(\w+)" ADD COLUMN +)("(\w+)" (\w+)[^;]*);/g,
    (whole, start, table, definition, column, type) => {
      const check = checkOf(table, column, type);
      return check ? `${start}${definition} CHECK (${check});` : whole;
    },
  );
  const triggers = made.filter((table) => APPEND_ONLY.includes(table)).flatMap(triggersOf);
  return [added.trimEnd(), ...triggers].join('\n\n').concat('\n');
}

function withChecks(table, body) {
  return body
    .split('\n')
    .map((line) => {
      const [, column, type] = /^\s+"(\w+)" (\w+)/.exec(line) ?? [];
      const check = column && checkOf(table, column, type);
      return check ? line.replace(/,?$/, (comma) => ` CHECK (${check})${comma}`) : line;
    })
    .join('\n');
}

/**
 * A day written YYYY-MM-DD; a whole instant; or a whole amount at or above nought. A movement moves something and a
 * pack holds something, so those are above it.
 */
function checkOf(table, column, type) {
  if (type === 'TEXT' && column.endsWith('On')) return `"${column}" LIKE '____-__-__'`;
  if (type !== 'BIGINT' && type !== 'INTEGER') return null;
  const whole = `"${column}" = CAST("${column}" AS BIGINT)`;
  if (column.endsWith('At')) return whole;
  const least = ABOVE_NOUGHT.includes(`${table}.${column}`) ? '>' : '>=';
  return `"${column}" ${least} 0 AND ${whole}`;
}

/** Amounts of which none is nought. */
export const ABOVE_NOUGHT = ['Movement.amount', 'Lot.pack', 'Lot.count', 'PurchaseLine.count'];

const triggersOf = (table) =>
  ['UPDATE', 'DELETE'].map(
    (verb) =>
      `CREATE TRIGGER "${table}_no_${verb.toLowerCase()}" BEFORE ${verb} ON "${table}"\nBEGIN\n` +
      `  SELECT RAISE(ABORT, '${table} only grows: correct a row by adding another one');\nEND;`,
  );
