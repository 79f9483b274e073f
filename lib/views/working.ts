import 'server-only';
import type { Clock } from '../clock';
import type { Working } from '../engine/working/shown';
import { workingOf } from '../engine/working/working';
import { figuresFor } from './budget-now';
import { type House, houseNow } from './house';

export type WorkingScreen = Pick<House, 'ways'> & { working: Working };

/** How the figure at an address was reached; null when there is no such figure, or no shop. */
export async function workingScreen(clock: Clock, address: string): Promise<WorkingScreen | null> {
  const house = await houseNow(clock);
  const working = house && workingOf(await figuresFor(house, address), address);
  return house && working && { ways: house.ways, working };
}
