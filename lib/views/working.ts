import 'server-only';
import type { Clock } from '../clock';
import type { Working } from '../engine/working/shown';
import { workingOf } from '../engine/working/working';
import { figuresFor } from './budget-now';
import { isOfSearch, searchedWorking } from './buying-workings';
import { type House, houseNow } from './house';

export type WorkingScreen = Pick<House, 'ways'> & { working: Working };

/** How the figure at an address was reached; null when there is no such figure, or no shop. */
export async function workingScreen(clock: Clock, address: string): Promise<WorkingScreen | null> {
  const house = await houseNow(clock);
  const working = house && (await workingIn(house, address));
  return house && working && { ways: house.ways, working };
}

/** How the figure at an address was reached in a shop that is already read. */
export const workingIn = async (house: House, address: string): Promise<Working | null> =>
  isOfSearch(address) ? searchedWorking(house, address) : workingOf(await figuresFor(house, address), address);
