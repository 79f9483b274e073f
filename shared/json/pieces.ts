/** A list of which each thing is made only while it is written, and let go again. As JSON it is the list of them. */
export class Each<T, Shown> implements Iterable<Shown> {
  constructor(
    private readonly things: readonly T[],
    private readonly shown: (thing: T) => Shown,
  ) {}

  *[Symbol.iterator](): Generator<Shown> {
    for (const thing of this.things) yield this.shown(thing);
  }

  toJSON(): Shown[] {
    return this.things.map(this.shown);
  }
}

/** About so many characters to a piece. */
const PIECE = 65_536;

/**
 * A document as JSON, the same text as `JSON.stringify` gives, in pieces: a large document never stands as one text
 * beside itself.
 *
 * Takes    plain data without cycles
 */
export function* jsonPieces(document: unknown): Generator<string, void> {
  let piece = '';
  for (const token of tokens(document)) {
    piece += token;
    if (piece.length < PIECE) continue;
    yield piece;
    piece = '';
  }
  if (piece !== '') yield piece;
}

/** Lists are written one by one, because they may be long; what stands in them, and all else that is short, at once. */
function* tokens(value: unknown): Generator<string, void> {
  if (value instanceof Each || (Array.isArray(value) && value.length > SHORT)) yield* listTokens(value);
  else if (isPlain(value) && Object.values(value).some(isLong)) yield* objectTokens(value);
  else yield JSON.stringify(value) ?? 'null';
}

const SHORT = 20;

const isPlain = (value: unknown): value is object =>
  typeof value === 'object' && value !== null && !Array.isArray(value) && !('toJSON' in value);

const isLong = (value: unknown): boolean => typeof value === 'object' && value !== null;

function* listTokens(list: Iterable<unknown>): Generator<string, void> {
  let before = '[';
  for (const one of list) {
    yield before;
    yield* tokens(one);
    before = ',';
  }
  yield before === '[' ? '[]' : ']';
}

function* objectTokens(object: object): Generator<string, void> {
  let before = '{';
  for (const [field, value] of Object.entries(object)) {
    if (!isLong(value) && JSON.stringify(value) === undefined) continue;
    yield `${before}${JSON.stringify(field)}:`;
    yield* tokens(value);
    before = ',';
  }
  yield before === '{' ? '{}' : '}';
}
