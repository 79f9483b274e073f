import 'server-only';
import type { Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { bottleAddresses } from './bottle-addresses';
import { type House, houseNow } from './house';

/** A bottle that nothing is left in: its history stays. */
export type EmptyBottle = { href: string; name: string; receivedOn: Day };

/** The empty bottles of a product, the newest first. Null when there is no shop. */
export async function emptyBottles(
  clock: Clock,
  product: string,
): Promise<(Pick<House, 'today'> & { bottles: EmptyBottle[] }) | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const addressOf = await bottleAddresses(house.id);
  const bottles = house.shop.containers
    .filter(({ product: { id }, remaining }) => id === product && remaining === 0)
    .map((container) => ({
      href: addressOf(container).href,
      name: `${container.packText}, lot ${container.lot}`,
      receivedOn: container.receivedOn,
    }))
    .sort((a, b) => b.receivedOn.localeCompare(a.receivedOn));
  return { today: house.today, bottles };
}
