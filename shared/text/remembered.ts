/** Longer texts are read each time: nobody writes an amount in more letters. */
const LONGEST = 60;

/**
 * Remembers what texts were read as. A shop with years of records says the same few hundred doses and amounts again and
 * again, and reading each is most of the work of reading the shop.
 *
 * Takes    how many texts are remembered; past that all are forgotten, so that it never grows
 * Gives    a function that takes everything that decides the answer, as texts, and how the text is read. What it gives is
 *          shared, so nobody may change it
 */
export function remembered<T>(most = 4_000): (key: readonly string[], read: () => T) => T {
  const known = new Map<string, T>();
  return (key, read) => {
    const name = key.join('\n');
    if (name.length > LONGEST) return read();
    const before = known.get(name);
    if (before !== undefined) return before;
    const made = read();
    if (known.size >= most) known.clear();
    known.set(name, made);
    return made;
  };
}
