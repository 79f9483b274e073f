import { productIn } from './mix-plan';
import type { MixProgress } from './mix-progress';
import { fillsOf, type Screen, screenAt } from './mix-screens';

const WORDS: Record<Exclude<Screen['kind'], 'pour'>, string> = {
  stops: 'at what says stop',
  wear: 'at what to put on',
  bottles: 'at the bottles to take down',
  water: 'at the water',
  acid: 'at the acid',
  meter: 'at the pH meter',
  top: 'at topping up',
  spray: 'at spraying',
  finish: 'at the record',
};

/** Where somebody is in a mix, in words: "at pour 3 of 5, Light oil, fill 2 of 2". */
export function whereAt(progress: MixProgress): string {
  const screen = screenAt(progress);
  const fills = fillsOf(progress);
  const fill = 'fill' in screen && fills > 1 ? `, fill ${screen.fill + 1} of ${fills}` : '';
  if (screen.kind !== 'pour') return `${WORDS[screen.kind]}${fill}`;
  return `at pour ${screen.number} of ${screen.of}, ${productIn(progress.plan, screen.product).name}${fill}`;
}
