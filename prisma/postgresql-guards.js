import { ABOVE_NOUGHT, APPEND_ONLY } from './guards.js';

/** One function for all tables that only grow. It is written into the first migration that makes such a table. */
const ONLY_GROWS = `CREATE FUNCTION only_grows() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% only grows: correct a row by adding another one', TG_TABLE_NAME;
END;
$$;`;

/**
 * A migration script for PostgreSQL with the guards of the tables it makes: a CHECK on every amount and every day, and a
 * trigger that refuses UPDATE, DELETE and TRUNCATE on tables that only grow. That a number is whole says its type.
 *
 * @param {string} script the script as Prisma writes it
 * @param {boolean} isFirst whether it is the first migration of all
 */
export function guardedPostgresql(script, isFirst) {
  /** @type {string[]} */
  const made = [];
  const plain = script.replace(/-- CreateSchema\nCREATE SCHEMA IF NOT EXISTS "public";\n\n?/, '');
  const checked = plain.replace(/CREATE TABLE "(\w+)" \(([\s\S]*?)\n\);/g, (whole, table, body) => {
    made.push(table);
    return whole.replace(body, () => withChecks(table, body, /^\s+"(\w+)" (\w+)/));
  });
  const altered = checked.replace(/ALTER TABLE "(\w+)" (ADD COLUMN[\s\S]*?);/g, (whole, table, body) =>
    whole.replace(body, () => withChecks(table, body, /^ADD COLUMN\s+"(\w+)" (\w+)/)),
  );
  const triggers = made.filter((table) => APPEND_ONLY.includes(table)).map(triggerOf);
  return [...(isFirst ? [ONLY_GROWS] : []), altered.trimEnd(), ...triggers].filter(Boolean).join('\n\n').concat('\n');
}

function withChecks(table, body, columnIn) {
  return body
    .split('\n')
    .map((line) => {
      const [, column, type] = columnIn.exec(line) ?? [];
      const check = column && checkOf(table, column, type);
      return check ? line.replace(/,?$/, (comma) => ` CHECK (${check})${comma}`) : line;
    })
    .join('\n');
}

function checkOf(table, column, type) {
  if (type === 'TEXT' && column.endsWith('On')) return `"${column}" LIKE '____-__-__'`;
  if ((type !== 'BIGINT' && type !== 'INTEGER') || column.endsWith('At')) return null;
  return `"${column}" ${ABOVE_NOUGHT.includes(`${table}.${column}`) ? '>' : '>='} 0`;
}

const triggerOf = (table) =>
  `CREATE TRIGGER "${table}_only_grows" BEFORE UPDATE OR DELETE OR TRUNCATE ON "${table}"\n` +
  '  FOR EACH STATEMENT EXECUTE FUNCTION only_grows();';
