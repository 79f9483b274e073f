/**
 * The schema of the same shops on PostgreSQL. JSON is kept as `json`, as it was written: `jsonb` would put its keys in
 * another order, and what was sealed would no longer fit its seal.
 *
 * @param {string} schema the schema as `schema.prisma` has it, for SQLite
 */
export const postgresqlSchema = (schema) =>
  schema
    .replace('provider = "sqlite"', 'provider = "postgresql"')
    .replace(/output( +)= "\.\/generated"/, 'output$1= "./postgresql"')
    .replace(/^(\s+\w+\s+Json\??)(?=\s|$)/gm, '$1 @db.Json');
