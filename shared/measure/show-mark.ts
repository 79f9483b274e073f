import { divide, type Exact, toNumber } from '../quantity/exact';
import { leadingNumber } from './number-text';
import { readUnit, USUAL_DROP } from './unit';

/**
 * A mark on a syringe, a spoon or a scale, in the unit that is printed on it: "3.5 mL", "3/4 tsp", "1 1/2 tbsp".
 *
 * Takes   µL or mg, exact, and what is printed for another mark of the same thing, such as "10 mL"
 * Rounds  nothing; spoons and cups read in fractions, as they are sold
 */
export function showMark(base: Exact, like: string): string {
  const { figure, unit } = markOf(base, like);
  return unit === '' ? figure : `${figure} ${unit}`;
}

/** A mark with its figure apart from its unit: what is read large, and what beside it. */
export type Mark = { figure: string; unit: string };

/** The same mark in its two parts. */
export function markOf(base: Exact, like: string): Mark {
  const printed = leadingNumber(like, '10 mL');
  const unit = readUnit(printed.ok ? printed.value.rest : '', USUAL_DROP);
  if (!unit.ok) return { figure: like, unit: '' };
  const number = divide(base, unit.value.worth);
  const { name } = unit.value;
  return { figure: SPOONS.test(name) ? broken(number) : String(toNumber(number)), unit: name };
}

/** Whether something that a shop measures with is a spoon or a cup, which a powder can be measured with too. */
export const isSpoon = ({ name, holdsText }: { name: string; holdsText: string }): boolean => {
  const holds = leadingNumber(holdsText, '1 tsp');
  const unit = readUnit(holds.ok ? holds.value.rest : '', USUAL_DROP);
  return (unit.ok && SPOONS.test(unit.value.name)) || /spoon|scoop/i.test(name);
};

const SPOONS = /^(tsp|tbsp|cup)$/;

function broken({ over, under }: Exact): string {
  const [whole, rest] = [over / under, over % under];
  if (rest === 0n) return String(whole);
  return whole === 0n ? `${rest}/${under}` : `${whole} ${rest}/${under}`;
}
