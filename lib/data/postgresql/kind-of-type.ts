/** What a column of PostgreSQL holds, as far as it is written in another way than text. */
type Kind = 'whole' | 'real' | 'yes-no' | 'bytes' | 'text';

const KINDS: Readonly<Record<string, Kind>> = {
  bigint: 'whole',
  integer: 'whole',
  'double precision': 'real',
  boolean: 'yes-no',
  bytea: 'bytes',
};

/** The kind of a column by the name of its type. */
export const kindOfType = (type: string): Kind => KINDS[type.toLowerCase()] ?? 'text';
