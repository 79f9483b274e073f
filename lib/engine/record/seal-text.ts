/** A value as the database holds it: its kind, and the value in the one way in which it is written. */
export type Column = { name: string; kind: 'integer' | 'real' | 'text' | 'blob'; value: string };

/** What one line of the chain seals: a version of a record with its benches and products, or a confirmation of one. */
export type Sealable = {
  application: string;
  version: string;
  kind: 'version' | 'confirmation';
  /** When it was written; as text, because a damaged one need not be a number. */
  recordedAt: string;
  /** Its own columns, and those of each bench and product in their order. A column that holds nothing is left out. */
  parts: { of: 'version' | 'bench' | 'product' | 'confirmation'; columns: readonly Column[] }[];
};

/** One line of the chain, as it is stored. */
export type Seal = {
  number: string;
  application: string;
  version: string;
  kind: Sealable['kind'];
  previousHash: string;
  hash: string;
  sealedAt: string;
};

/** One name for what a line seals, whoever speaks of it. */
export const sealedName = ({
  kind,
  application,
  version,
}: Pick<Sealable, 'kind' | 'application' | 'version'>): string => JSON.stringify([kind, application, version]);

/** What stands before the first line. */
export const NO_HASH = '0'.repeat(64);

/**
 * The text whose SHA-256 is the hash of a line of the chain. Anybody can make it again from an export and any program:
 *
 *   bench-and-bottle record seal 1
 *   number 12                            the place of the line in the chain of this shop, from 1
 *   previous 9f86d0…                     the hash of the line before it; 64 zeros before the first
 *   sealed 1774947600000                 when, in milliseconds since 1970
 *   written before this was kept         only where it was sealed later than it was written, by the start of the program
 *   version actor text "Ada"             then one line a column: of what, name, kind, value
 *   version endedAt integer 1774944000000
 *   bench 0 benchId text "b"             benches and products with their place, from 0
 *   product 0 dose text "12 mL/gal"
 *
 * Columns stand in the order of their names; one that holds nothing is left out, so that a column which later programs
 * add changes no earlier text. Texts are written as JSON strings, so that no text can pass for a further line; whole
 * numbers in digits, others in the shortest decimals that mean them, bytes in hexadecimal. Lines end with \n, the last too.
 */
export function sealText(seal: Pick<Seal, 'number' | 'previousHash' | 'sealedAt'>, sealed: Sealable): string {
  const isLate = seal.sealedAt !== sealed.recordedAt;
  const places = { version: 0, bench: 0, product: 0, confirmation: 0 };
  const lines = [
    'bench-and-bottle record seal 1',
    `number ${seal.number}`,
    `previous ${seal.previousHash}`,
    `sealed ${seal.sealedAt}`,
    ...(isLate ? ['written before this was kept'] : []),
    ...sealed.parts.flatMap(({ of, columns }) => {
      const name = of === 'bench' || of === 'product' ? `${of} ${places[of]++}` : of;
      return inOrder(columns).map((column) => `${name} ${column.name} ${column.kind} ${written(column)}`);
    }),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

const inOrder = (columns: readonly Column[]): Column[] => [...columns].sort((a, b) => (a.name < b.name ? -1 : 1));

const written = ({ kind, value }: Column): string => (kind === 'text' ? JSON.stringify(value) : value);
