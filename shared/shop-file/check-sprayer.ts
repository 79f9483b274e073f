import { readVolume } from '../measure/size';
import { add, compare, divide, type Exact, exact, multiply, subtract, ZERO } from '../quantity/exact';
import type { Ids } from './check-ids';
import type { ShopFile } from './contract';
import { type Path, shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

/** Ten thousand litres, in mL. */
const LARGEST = exact(10_000_000);
const MOST_FILLS = exact(10_000);

/** A sprayer that holds no more than it loses, and programs that no sprayer could finish. */
export function checkSprayer({ part }: ReadablePart<ShopFile>, ids: Ids, complain: Complain): void {
  const sprayers = [...eachOf(part?.shop?.sprayers)];
  for (const [index, sprayer] of sprayers) {
    const usable = checkOne(['shop', 'sprayers', index], 'capacity', sprayer, complain);
    if (usable && index === 0) checkFills(part, ids, usable, complain);
  }
  const { fillCapacity, ...rest } = part?.shop ?? {};
  if (fillCapacity != null || (part?.shop?.sprayers ?? []).length > 0) {
    const usable =
      fillCapacity == null ? null : checkOne(['shop'], 'fillCapacity', { ...rest, capacity: fillCapacity }, complain);
    if (usable && sprayers.length === 0) checkFills(part, ids, usable, complain);
    return;
  }
  complain(
    ['shop', 'fillCapacity'],
    'This is missing. Write a volume with its unit in quotes, such as "2 gal" or "0.5 L", or name the sprayers at hand in shop.sprayers.',
    [
      ['shop', 'sprayers'],
      ['shop', 'fillCapacity'],
    ],
  );
}

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
  if (compare(capacity, exact(1)) < 0) {
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
function checkFills(part: Loose<ShopFile>, ids: Ids, each: Exact, complain: Complain): void {
  for (const [index, program] of eachOf(part?.programs)) {
    let spray = ZERO;
    for (const [, id] of eachOf(program.benches)) {
      const bench = part?.benches?.[ids.benches.get(id) ?? -1];
      for (const [, { count, mlPerPlant }] of eachOf(bench?.plants)) {
        const plants = multiply(exact(count ?? 0), exact(mlPerPlant ?? 0));
        spray = add(spray, multiply(plants, exact(bench?.coverage ?? 1)));
      }
    }
    if (compare(spray, LARGEST) <= 0 && compare(divide(spray, each), MOST_FILLS) <= 0) continue;
    complain(
      ['programs', index, 'benches'],
      'The plants on these benches would take more than 10,000 litres or 10,000 fills of spray each time. Look at their counts, their mL per plant and the fill.',
    );
  }
}
