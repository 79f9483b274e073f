import { closeSync, fstatSync, openSync, readSync } from 'node:fs';

/*
 * What SQLite's write-ahead log really holds, read without SQLite: each frame carries a checksum over all frames before
 * it (the WAL format: https://sqlite.org/fileformat2.html#walformat). So what was committed can be looked for in the
 * file at its path before anybody is told that it was.
 */

/** How far a log was followed: its salts, and its whole transactions up to the last that was committed. */
export type Followed = { salts: string; frames: number; commits: number; sums: readonly [number, number] };

const [HEADER, FRAME_HEADER] = [32, 24];
const MAGICS = new Map([
  [0x377f0682, true],
  [0x377f0683, false],
]);

/**
 * Follow a log from where it was followed before, or from its beginning when it was begun anew since.
 *
 * Gives    null when there is no log, when it is empty, or when its header is damaged
 */
export function followLog(file: string, before: Followed | null): Followed | null {
  const handle = openIfThere(file);
  if (handle === null) return null;
  try {
    const header = headerOf(handle);
    if (!header) return null;
    const isSame = before !== null && before.salts === header.salts;
    return follow(handle, header, isSame ? before : { ...header, frames: 0, commits: 0 });
  } finally {
    closeSync(handle);
  }
}

function openIfThere(file: string): number | null {
  try {
    return openSync(file, 'r');
  } catch {
    return null;
  }
}

type Header = { salts: string; sums: readonly [number, number]; pageSize: number; isLittle: boolean };

function headerOf(handle: number): Header | null {
  const bytes = Buffer.alloc(HEADER);
  if (readSync(handle, bytes, 0, HEADER, 0) < HEADER) return null;
  const isLittle = MAGICS.get(bytes.readUInt32BE(0));
  if (isLittle === undefined) return null;
  const sums = added([0, 0], bytes, 0, 24, isLittle);
  if (sums[0] !== bytes.readUInt32BE(24) || sums[1] !== bytes.readUInt32BE(28)) return null;
  return { salts: bytes.toString('hex', 16, 24), sums, pageSize: bytes.readUInt32BE(8), isLittle };
}

function follow(handle: number, { salts, pageSize, isLittle }: Header, from: Followed): Followed {
  const length = FRAME_HEADER + pageSize;
  const bytes = Buffer.alloc(length);
  let whole: Followed = from;
  let sums = from.sums;
  const last = fstatSync(handle).size;
  for (let frame = from.frames; HEADER + (frame + 1) * length <= last; frame += 1) {
    if (readSync(handle, bytes, 0, length, HEADER + frame * length) < length) break;
    sums = added(added(sums, bytes, 0, 8, isLittle), bytes, FRAME_HEADER, pageSize, isLittle);
    const isOurs = bytes.toString('hex', 8, 16) === salts;
    if (!isOurs || sums[0] !== bytes.readUInt32BE(16) || sums[1] !== bytes.readUInt32BE(20)) break;
    const isCommit = bytes.readUInt32BE(4) !== 0;
    if (isCommit) whole = { salts, sums, frames: frame + 1, commits: whole.commits + 1 };
  }
  return whole;
}

/** The running checksum of the format: two sums that each word and the other sum are added to, in 32 bits. */
function added(
  [first, second]: readonly [number, number],
  bytes: Buffer,
  from: number,
  length: number,
  isLittle: boolean,
): readonly [number, number] {
  const view = new DataView(bytes.buffer, bytes.byteOffset + from, length);
  // What is kept in these has 32 bits, however large it was.
  const [a, b] = [Uint32Array.of(first), Uint32Array.of(second)];
  for (let at = 0; at < length; at += 8) {
    a[0] = (a[0] ?? 0) + view.getUint32(at, isLittle) + (b[0] ?? 0);
    b[0] = (b[0] ?? 0) + view.getUint32(at + 4, isLittle) + (a[0] ?? 0);
  }
  return [a[0] ?? 0, b[0] ?? 0];
}
