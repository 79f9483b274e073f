import { readVolume } from '../measure/size';
import { add, compare, divide, type Exact, exact, multiply, subtract, ZERO } from '../quantity/exact';
import type { Ids } from './check-ids';
import type { ShopFile } from './contract';
import { shown } from './path';
import { type Complain, eachOf, type Loose, type ReadablePart } from './readable-part';

/** Ten thousand litres, in mL. */
const LARGEST = exact(10_000_000);
const MOST_FILLS = exact(10_000);

/** A sprayer that holds no more than it loses, and programs that no sprayer could finish. */
export function checkSprayer({ part }: ReadablePart<ShopFile>, ids: Ids, complain: Complain): void {
  const { fillCapacity, lossPerFill, measuringStep } = part?.shop ?? {};
  const at = ['shop', 'fillCapacity'];
  const capacity = volumeIn(fillCapacity);
  const loss = volumeIn(lossPerFill ?? '0 mL');
  const step = volumeIn(measuringStep);
  if (step && compare(step, LARGEST) > 0) {
    complain(['shop', 'measuringStep'], `${shown(measuringStep)} is more than any sprayer holds. Write less.`);
  }
  if (!capacity) return;
  if (compare(capacity, exact(1)) < 0) {
    complain(
      at,
      `${shown(fillCapacity)} is less than a millilitre. Write what one fill of the sprayer holds, such as "2 gal".`,
    );
  } else if (compare(capacity, LARGEST) > 0) {
    complain(at, `${shown(fillCapacity)} is more than any sprayer holds. Write what one fill holds, such as "2 gal".`);
  } else if (loss && compare(loss, capacity) >= 0) {
    complain(
      ['shop', 'lossPerFill'],
      `${shown(lossPerFill)} is lost with every fill, and a fill holds only ${shown(fillCapacity)}. Write a smaller loss, or a larger fill.`,
    );
  } else if (loss) checkFills(part, ids, subtract(capacity, loss), complain);
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
