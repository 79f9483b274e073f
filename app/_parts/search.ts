/** What stands after the question mark of an address. A field that came twice is a list. */
export type Search = Record<string, string | string[] | undefined>;

/** One field of the address; of a doubled one, the first. */
export const one = (value: string | string[] | undefined): string | undefined =>
  Array.isArray(value) ? value[0] : value;

/** Every field of the address with its value, those that came twice twice, in their order. */
export const pairsOf = (search: Search): [name: string, value: string][] =>
  Object.entries(search).flatMap(([name, value]) =>
    (Array.isArray(value) ? value : [value]).flatMap((one): [string, string][] =>
      one === undefined ? [] : [[name, one]],
    ),
  );
