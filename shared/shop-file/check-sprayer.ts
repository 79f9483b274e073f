import { readVolume } from '../measure/size';
import { add, compare, divide, type Exact, exact, multiply, subtract, toNumber, ZERO } from '../quantity/exact';
import type { Ids } from './check-ids';
import type { ShopFile } from './contract';
import { nearest } from './nearest';
import { type Path, shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

/** Ten thousand litres, in mL. */
const LARGEST = exact(10_000_000);
const MOST_FILLS = 10_000;

/**
 * A sprayer that holds no more than it loses, one that a program names and nobody has, and programs that none could finish.
 *
 * Gives    how many fills each program takes each time, by its place; without those that cannot be told
 */
export function checkSprayer(
  { part }: ReadablePart<ShopFile>,
  ids: Ids,
  complain: Complain,
): ReadonlyMap<number, number> {
  const listed = part?.shop?.sprayers ?? [];
  const usable = new Map<number, Exact | null>();
  for (const [index, sprayer] of eachOf(listed)) {
    usable.set(index, checkOne(['shop', 'sprayers', index], 'capacity', sprayer, complain));
  }
  const fills = new Map<number, number>();
  const plain = checkPlain(part, listed.length > 0, complain);
  for (const [index, program] of eachOf(part?.programs)) {
    const named = program.sprayer == null ? 0 : listed.findIndex((one) => one?.name === program.sprayer);
    if (named < 0) complain(['programs', index, 'sprayer'], noSprayer(program.sprayer, listed), [['shop', 'sprayers']]);
    const each = listed.length > 0 ? usable.get(named) : plain;
    if (each) fills.set(index, checkFills(part, ids, index, each, complain));
  }
  return fills;
}

/** What a shop says of a fill beside its sprayers, or instead of them. */
function checkPlain(part: Loose<ShopFile>, hasSprayers: boolean, complain: Complain): Exact | null {
  const { fillCapacity, ...rest } = part?.shop ?? {};
  if (fillCapacity != null) return checkOne(['shop'], 'fillCapacity', { ...rest, capacity: fillCapacity }, complain);
  if (hasSprayers) return null;
  complain(
    ['shop', 'fillCapacity'],
    'This is missing. Write a volume with its unit in quotes, such as "2 gal" or "0.5 L", or name the sprayers at hand in shop.sprayers.',
    [
      ['shop', 'sprayers'],
      ['shop', 'fillCapacity'],
    ],
  );
  return null;
}

function noSprayer(named: string | null | undefined, listed: Sprayers): string {
  const names = [...eachOf(listed)].flatMap(([, { name }]) => name ?? []);
  const meant = nearest(named ?? '', names);
  const hint = meant ? `Did you mean ${shown(meant)}?` : 'Name one of shop.sprayers, or leave it out for the first.';
  return `There is no sprayer ${shown(named)} in this shop. ${hint}`;
}

type Sprayers = readonly ({ readonly name?: string | null } | null | undefined)[];
type Holding = { capacity?: string | null; lossPerFill?: string | null; measuringStep?: string | null };

/** What each fill of a sprayer brings to the plants; null, having complained, when it cannot be. */
function checkOne(path: Path, field: string, sprayer: Holding, complain: Complain): Exact | null {
  const { capacity: fillCapacity, lossPerFill, measuringStep } = sprayer;
  const at = [...path, field];
  const capacity = volumeIn(fillCapacity);
  const loss = volumeIn(lossPerFill ?? '0 mL');
  const step = volumeIn(measuringStep);
  if (step && compare(step, LARGEST) > 0) {
    complain([...path, 'measuringStep'], `${shown(measuringStep)} is more than any sprayer holds. Write less.`);
  }
  if (!capacity) return null;
  if (compare(capacity, ZERO) === 0) {
    complain(at, 'Write what one fill of the sprayer holds, such as "2 gal", or name the sprayers in shop.sprayers.');
  } else if (compare(capacity, exact(1)) < 0) {
    complain(
      at,
      `${shown(fillCapacity)} is less than a millilitre. Write what one fill of the sprayer holds, such as "2 gal".`,
    );
  } else if (compare(capacity, LARGEST) > 0) {
    complain(at, `${shown(fillCapacity)} is more than any sprayer holds. Write what one fill holds, such as "2 gal".`);
  } else if (loss && compare(loss, capacity) >= 0) {
    complain(
      [...path, 'lossPerFill'],
      `${shown(lossPerFill)} is lost with every fill, and a fill holds only ${shown(fillCapacity)}. Write a smaller loss, or a larger fill.`,
    );
  } else if (loss) return subtract(capacity, loss);
  return null;
}

function volumeIn(text: string | null | undefined): Exact | null {
  const reading = text == null ? null : readVolume(text);
  return reading?.ok ? reading.value : null;
}

/** A slip of the keys in a count or in the mL per plant shows here, before it orders a lake of spray. */
function checkFills(part: Loose<ShopFile>, ids: Ids, index: number, each: Exact, complain: Complain): number {
  let spray = ZERO;
  for (const [, id] of eachOf(part?.programs?.[index]?.benches)) {
    const bench = part?.benches?.[ids.benches.get(id) ?? -1];
    for (const [, { count, mlPerPlant }] of eachOf(bench?.plants)) {
      const plants = multiply(exact(count ?? 0), exact(mlPerPlant ?? 0));
      spray = add(spray, multiply(plants, exact(bench?.coverage ?? 1)));
    }
  }
  const fills = toNumber(divide(spray, each));
  if (compare(spray, LARGEST) <= 0 && fills <= MOST_FILLS) return fills;
  complain(
    ['programs', index, 'benches'],
    'The plants on these benches would take more than 10,000 litres or 10,000 fills of spray each time. Look at their counts, their mL per plant and the fill.',
  );
  return 0;
}
