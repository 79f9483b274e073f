/*
 * Which database holds the shops. Plain JavaScript, because the start asks before anything is installed.
 */

/**
 * The address of the PostgreSQL database that holds the shops; null when they are kept in the file of the data folder.
 *
 * Throws   Error with a sentence when DATABASE_URL is the address of something else
 *
 * @param {Record<string, string | undefined>} env
 * @returns {string | null}
 */
export function postgresqlAddressIn(env) {
  const address = env.DATABASE_URL;
  if (!address) return null;
  if (/^postgres(ql)?:\/\//.test(address) && URL.canParse(address)) return address;
  throw new Error(
    'DATABASE_URL is no address of a PostgreSQL database. Write postgresql://ACCOUNT@HOST/DATABASE, or leave it out: then the shop is kept in a file of its data folder.',
  );
}

/**
 * An address without account and password, for people and for logs.
 *
 * @param {string} address
 */
export function withoutAccount(address) {
  const { hostname, port, pathname } = new URL(address);
  return `postgresql://${hostname}${port ? `:${port}` : ''}${pathname}`;
}
