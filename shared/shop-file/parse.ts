import { z } from 'zod';
import type { Fault } from '../outcome';
import { limitFaults } from './check-limits';
import { ShopFile } from './contract';
import { fieldsAt } from './known-fields';
import { nearest } from './nearest';
import { contradictions } from './part-faults';
import { type Path, pathText, shortened } from './path';
import { readablePart } from './readable-part';
import { scanJson } from './scan-json';

export type ParsedShopFile = { ok: true; file: ShopFile } | { ok: false; faults: Fault[] };

/** A shop of two hundred products with years of records is about a tenth of this. */
export const LARGEST_FILE = 20_000_000;
export const TOO_LARGE = 'The file is larger than 20 MB; no shop is. Look whether this is the right file.';

/** More faults than anybody reads in one go. */
export const MOST_FAULTS = 5_000;

/**
 * A shop file, read whole or refused whole.
 *
 * Takes    the text of the file
 * Gives    the shop with every default filled in; or every fault at once, each with its place and what to write instead
 * Refuses  more than 20 MB, what is not JSON, fields written twice or unknown, values that cannot be read, ids given
 *          twice, references to nothing, and whatever contradicts itself
 */
export function parseShopFile(text: string): ParsedShopFile {
  if (isTooLarge(text)) return { ok: false, faults: [{ path: '', message: TOO_LARGE }] };
  // Some editors begin a file with a mark that nobody sees.
  const bare = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const scan = scanJson(bare);
  if (!scan.readable) return { ok: false, faults: atMost(scan.faults) };
  const raw: unknown = JSON.parse(bare);
  const parsed = ShopFile.safeParse(raw);
  const issues = parsed.error?.issues ?? [];
  const readable = parsed.success
    ? { part: withFillKnown(parsed.data, raw), isUnreadable: () => false }
    : readablePart<ShopFile>(raw, unreadableIn(issues));
  const faults = [...scan.faults, ...onePerPlace(issues.flatMap(faultsIn)), ...contradictionsIn(readable)];
  if (!parsed.success || faults.length > 0) return { ok: false, faults: atMost(faults) };
  const { shop, lots } = parsed.data;
  return { ok: true, file: { ...parsed.data, shop: withFirstSprayer(shop), lots: lots.map(withoutSum) } };
}

/** Where sprayers are named, what else a fill might be was left out and need not be judged. */
const withFillKnown = (file: ShopFile, raw: unknown): ShopFile =>
  SaysFill.safeParse(raw).success ? file : { ...file, shop: withFirstSprayer(file.shop) };

const SaysFill = z.looseObject({ shop: z.looseObject({ fillCapacity: z.string() }) });

const contradictionsIn = (readable: Parameters<typeof contradictions>[0]): Fault[] =>
  [...contradictions(readable, true), ...limitFaults(readable)].map(({ text, message }) => ({ path: text, message }));

/** The first sprayer is the one that is meant wherever none is named. */
function withFirstSprayer(shop: ShopFile['shop']): ShopFile['shop'] {
  const [first] = shop.sprayers;
  if (!first) return shop;
  const { capacity: fillCapacity, lossPerFill, measuringStep } = first;
  return { ...shop, fillCapacity, lossPerFill, measuringStep };
}

/** Several containers are full; what is left in all of them together says nothing more. */
const withoutSum = (lot: ShopFile['lots'][number]) => (lot.count > 1 ? { ...lot, remaining: null } : lot);

const isTooLarge = (text: string): boolean =>
  text.length > LARGEST_FILE ||
  (text.length * 3 > LARGEST_FILE && new TextEncoder().encode(text).length > LARGEST_FILE);

type Issue = z.core.$ZodIssue;

/** An unknown field is a fault, but the object it stands in can still be read. */
const unreadableIn = (issues: Issue[]): Path[] =>
  issues.filter(({ code }) => code !== 'unrecognized_keys').map(({ path }) => path as Path);

function faultsIn(issue: Issue): Fault[] {
  const path = issue.path as Path;
  if (issue.code !== 'unrecognized_keys') return [{ path: pathText(path), message: issue.message }];
  const known = fieldsAt(ShopFile, path);
  return issue.keys.map((key) => ({ path: pathText([...path, key]), message: unknownField(key, known) }));
}

function unknownField(key: string, known: string[]): string {
  const meant = nearest(key, known);
  const hint = meant ? `Did you mean "${meant}"?` : `The fields here are ${known.join(', ')}.`;
  return `There is no field ${JSON.stringify(shortened(key, 60))} here. ${hint}`;
}

function onePerPlace(faults: Fault[]): Fault[] {
  const first = new Map<string, Fault>();
  for (const fault of faults) if (!first.has(fault.path)) first.set(fault.path, fault);
  return [...first.values()];
}

function atMost(faults: Fault[]): Fault[] {
  const left = faults.length - MOST_FAULTS;
  if (left <= 0) return faults;
  return [
    ...faults.slice(0, MOST_FAULTS),
    { path: '', message: `There are ${left} faults more. Put these right first.` },
  ];
}
