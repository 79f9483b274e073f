import { checkDoses } from './check-doses';
import { checkGoods } from './check-goods';
import { checkIds, idsOf } from './check-ids';
import { checkSprayer } from './check-sprayer';
import { checkStock } from './check-stock';
import { checkTimes } from './check-times';
import { ShopFile } from './contract';
import { type Path, pathText } from './path';
import { type Complain, type ReadablePart, readablePart } from './readable-part';

/** One fault of a part of a shop: its place, as a path and as people read it, and what to write instead. */
export type PartRead = { path: Path; text: string; message: string };

/**
 * What is wrong with a part of a shop, held against the same contract and the same checks as a whole file.
 *
 * Takes    a value in the shape of a shop file, and whether it is all of the shop: only then must everything that it
 *          refers to be in it
 */
export const partFaults = (raw: unknown, isWhole: boolean): PartRead[] => partRead(raw, isWhole).faults;

/** The same with the part itself; null where it could not be read. */
export function partRead(raw: unknown, isWhole: boolean): { faults: PartRead[]; file: ShopFile | null } {
  const parsed = ShopFile.safeParse(raw);
  const issues = parsed.error?.issues ?? [];
  const readable = parsed.success
    ? { part: parsed.data, isUnreadable: () => false }
    : readablePart<ShopFile>(
        raw,
        issues.map(({ path }) => path as Path),
      );
  const found = issues.map(({ path, message }) => faultAt(path as Path, message));
  return { faults: [...found, ...contradictions(readable, isWhole)], file: parsed.data ?? null };
}

const faultAt = (path: Path, message: string): PartRead => ({ path, text: pathText(path), message });

/** Packs, amounts and doses that cannot be of their product: with one of them nothing can be worked out of a shop. */
export function measureFaults(file: ShopFile): PartRead[] {
  const faults: PartRead[] = [];
  const ids = idsOf(file);
  const complain: Complain = (path, message) => faults.push(faultAt(path, message));
  checkStock({ part: file, isUnreadable: () => false }, ids, complain);
  checkDoses({ part: file, isUnreadable: () => false }, ids, complain);
  return faults;
}

/** Whatever contradicts itself in what could be read. */
export function contradictions(readable: ReadablePart<ShopFile>, isWhole: boolean): PartRead[] {
  const faults: PartRead[] = [];
  const complain: Complain = (path, message, restsOn = []) => {
    if (!restsOn.some(readable.isUnreadable)) faults.push(faultAt(path, message));
  };
  const ids = idsOf(readable.part);
  if (isWhole) checkIds(readable, ids, complain);
  checkStock(readable, ids, complain);
  checkDoses(readable, ids, complain);
  checkGoods(readable, complain);
  checkTimes(readable, complain);
  checkSprayer(readable, ids, complain);
  return faults;
}
