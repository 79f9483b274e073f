import type { Fault } from '../outcome';
import { type Path, pathText, shortened } from './path';

/** What is wrong with a text as JSON. When it is readable, `JSON.parse` will take it. */
export type Scan = { readable: boolean; faults: Fault[] };

const DEEPEST = 32;
export const MOST_VALUES = 1_000_000;
export const LONGEST_LIST = 50_000;
const LONGEST_NUMBER = 40;

type State = {
  text: string;
  at: number;
  path: (string | number)[];
  values: number;
  faults: Fault[];
};

/**
 * Read a text once, from front to back, for what `JSON.parse` would not say: the line and column of a slip, a field that
 * is written twice (it would keep the last one in silence), and nesting or size that no shop has.
 *
 * Gives  every doubled field, and the first thing that makes the rest unreadable
 */
export function scanJson(text: string): Scan {
  const state: State = { text, at: 0, path: [], values: 0, faults: [] };
  skipSpace(state);
  if (state.at === text.length)
    return { readable: false, faults: [{ path: '', message: 'The file is empty. Write a shop file into it.' }] };
  const readable = scanValue(state) && atEnd(state);
  return { readable, faults: state.faults };
}

/** Every function below gives false once the rest cannot be read, having said why. */
function scanValue(state: State): boolean {
  state.values += 1;
  if (state.values > MOST_VALUES)
    return stop(state, `The file holds more than ${MOST_VALUES} values; no shop is that large.`);
  const first = state.text[state.at];
  if (state.path.length >= DEEPEST && (first === '{' || first === '[')) {
    return stopHere(state, `lists and objects are nested more than ${DEEPEST} deep; no shop file is`);
  }
  if (first === '{') return scanObject(state);
  if (first === '[') return scanList(state);
  if (first === '"') return scanText(state);
  if (first !== undefined && /[-0-9]/.test(first)) return scanNumber(state);
  for (const word of ['true', 'false', 'null']) {
    if (state.text.startsWith(word, state.at)) return advance(state, word.length) && endOfWord(state);
  }
  return unexpected(state, 'a value');
}

function scanObject(state: State): boolean {
  const opened = state.at;
  const seen = new Map<string, number>();
  advance(state, 1);
  skipSpace(state);
  if (state.text[state.at] === '}') return advance(state, 1);
  for (;;) {
    const key = scanKey(state, seen, opened);
    if (key === null) return false;
    state.path.push(key);
    if (!scanValue(state)) return false;
    state.path.pop();
    skipSpace(state);
    const next = state.text[state.at];
    if (next === '}') return advance(state, 1);
    if (next !== ',') return unexpected(state, 'a comma or }', opened);
    advance(state, 1);
    skipSpace(state);
    if (state.text[state.at] === '}') return stopHere(state, 'there is a comma before }; take it out');
  }
}

function scanKey(state: State, seen: Map<string, number>, opened: number): string | null {
  const from = state.at;
  if (state.text[from] !== '"') {
    unexpected(state, 'the name of a field in double quotes', opened);
    return null;
  }
  if (!scanText(state)) return null;
  const key: string = JSON.parse(state.text.slice(from, state.at));
  const times = (seen.get(key) ?? 0) + 1;
  seen.set(key, times);
  if (times === 2) {
    const name = JSON.stringify(shortened(key, 40));
    state.faults.push({
      path: pathText([...state.path, key]),
      message: `The field ${name} is written twice here. Keep one.`,
    });
  }
  skipSpace(state);
  if (state.text[state.at] !== ':') {
    unexpected(state, 'a colon');
    return null;
  }
  advance(state, 1);
  skipSpace(state);
  return key;
}

function scanList(state: State): boolean {
  const opened = state.at;
  advance(state, 1);
  skipSpace(state);
  if (state.text[state.at] === ']') return advance(state, 1);
  for (let index = 0; ; index++) {
    if (index === LONGEST_LIST)
      return stop(state, `This list holds more than ${LONGEST_LIST} things; no shop has that many.`);
    state.path.push(index);
    if (!scanValue(state)) return false;
    state.path.pop();
    skipSpace(state);
    const next = state.text[state.at];
    if (next === ']') return advance(state, 1);
    if (next !== ',') return unexpected(state, 'a comma or ]', opened);
    advance(state, 1);
    skipSpace(state);
    if (state.text[state.at] === ']') return stopHere(state, 'there is a comma before ]; take it out');
  }
}

function scanText(state: State): boolean {
  const { text } = state;
  const opened = state.at;
  for (let at = opened + 1; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === QUOTE) {
      state.at = at + 1;
      return true;
    }
    if (code < 0x20) {
      state.at = at;
      return stopHere(
        state,
        'a quoted text runs over the end of its line, or holds a control character; close it with "',
      );
    }
    if (code !== BACKSLASH) continue;
    if (!ESCAPE.test(text.slice(at, at + 6))) {
      state.at = at;
      return stopHere(state, 'a backslash is followed by something JSON does not know; write two backslashes for one');
    }
    at += 1;
  }
  state.at = opened;
  return stopHere(state, 'a quoted text begins that is never closed; close it with "');
}

const QUOTE = 0x22;
const BACKSLASH = 0x5c;
const ESCAPE = /^\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/;

function scanNumber(state: State): boolean {
  const written = /^[-+.0-9A-Za-z]*/.exec(state.text.slice(state.at, state.at + LONGEST_NUMBER + 1))?.[0] ?? '';
  if (written.length > LONGEST_NUMBER)
    return stopHere(state, `a number has more than ${LONGEST_NUMBER} digits; shorten it`);
  if (!NUMBER.test(written))
    return stopHere(state, `${written} is not a number as JSON writes one, such as 12, 0.5 or -3`);
  return advance(state, written.length);
}

const NUMBER = /^-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?$/;

/** "nullx" is not null. */
const endOfWord = (state: State): boolean =>
  /[A-Za-z0-9_]/.test(state.text[state.at] ?? ' ') ? unexpected(state, 'a comma or a closing bracket') : true;

function atEnd(state: State): boolean {
  skipSpace(state);
  return state.at === state.text.length || unexpected(state, 'the end of the file');
}

function skipSpace(state: State): void {
  for (;;) {
    const code = state.text.charCodeAt(state.at);
    if (code !== 0x20 && code !== 0x0a && code !== 0x0d && code !== 0x09) return;
    state.at += 1;
  }
}

function advance(state: State, by: number): true {
  state.at += by;
  return true;
}

function unexpected(state: State, wanted: string, opened?: number): false {
  const { text, at } = state;
  if (at >= text.length) {
    const since = opened === undefined ? '' : ` for the bracket opened at ${placeOf(text, opened)}`;
    return stopHere(state, `the file ends where ${wanted} was expected${since}`);
  }
  if (text.startsWith('//', at) || text.startsWith('/*', at))
    return stopHere(state, 'there is a comment; JSON has none, take it out');
  const found = text[at] === "'" ? 'a single quote; write double quotes (")' : JSON.stringify(wordAt(text, at));
  return stopHere(state, `${wanted} was expected, but there is ${found}`);
}

const wordAt = (text: string, at: number): string =>
  /^(?:[\w$]+|.)/u.exec(text.slice(at, at + 20))?.[0] ?? text.slice(at, at + 1);

function stopHere(state: State, what: string): false {
  state.faults.push({
    path: '',
    message: `This is not JSON that can be read: at ${placeOf(state.text, state.at)}, ${what}.`,
  });
  return false;
}

function stop(state: State, message: string): false {
  state.faults.push({ path: pathText(state.path as Path), message });
  return false;
}

function placeOf(text: string, at: number): string {
  let line = 1;
  let lineStart = 0;
  for (let end = text.indexOf('\n'); end !== -1 && end < at; end = text.indexOf('\n', end + 1)) {
    line += 1;
    lineStart = end + 1;
  }
  return `line ${line}, column ${at - lineStart + 1}`;
}
