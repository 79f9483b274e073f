import { expect } from 'vitest';
import type { Clock } from '@/lib/clock';
import type { Step, Working } from '@/lib/engine/working/shown';
import type { Fig } from '@/lib/views/figures';
import { houseNow } from '@/lib/views/house';
import { workingIn, workingScreen } from '@/lib/views/working';

/** Every figure of a screen, wherever it stands in it. */
function figuresIn(screen: unknown): Fig[] {
  if (Array.isArray(screen)) return screen.flatMap(figuresIn);
  if (typeof screen !== 'object' || screen === null) return [];
  return isFig(screen) ? [screen] : Object.values(screen).flatMap(figuresIn);
}

const isFig = (thing: object): thing is Fig => 'at' in thing && 'value' in thing && typeof thing.at === 'string';

/** The working at an address, as the page of it and the sheet over a page show it. */
export async function opened(clock: Clock, at: string): Promise<Working> {
  const screen = await workingScreen(clock, at);
  if (!screen) throw new Error(`nothing opens under ${at}`);
  return screen.working;
}

/**
 * Open every figure of a screen, and every figure in its working, down to what was typed in: each has to have the value
 * that it was shown with. What a draw took may lead to the bottle and what is left in it, which is another thing.
 *
 * Gives   the workings by their addresses
 */
export async function openAll(clock: Clock, screen: unknown): Promise<Map<string, Working>> {
  const house = await houseNow(clock);
  const [found, waiting] = [new Map<string, Working>(), figuresIn(screen)];
  for (let figure = waiting.pop(); figure; figure = waiting.pop()) {
    const working = found.get(figure.at) ?? (house && (await workingIn(house, figure.at)));
    if (!working) throw new Error(`nothing opens under ${figure.at}`);
    if (isShownHere(figure, working)) expect(working.value, figure.at).toEqual(figure.value);
    if (found.has(figure.at)) continue;
    found.set(figure.at, working);
    waiting.push(...working.steps.flatMap(({ figure: at, value }) => (at === null ? [] : { at, value })));
  }
  return found;
}

const isShownHere = ({ at, value }: Fig, working: Working): boolean =>
  !at.startsWith('container/') || value.kind === working.value.kind;

/** Money that a step, or a working, says; 0 for anything else. */
export const moneyIn = ({ value }: Pick<Step, 'value'>): number => (value.kind === 'money' ? value.micros : 0);
