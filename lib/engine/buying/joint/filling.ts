import type { Part } from '../habit';
import type { Horizon } from '../horizon';
import { ratePerDay, usableBehind } from '../pack-use';
import { isAtPriceOn } from '../price-periods';
import type { Prices } from './cheapest-column';
import type { Slots } from './slots';

/**
 * What a part can gain at most by packs that nobody opens within the horizon, which make orders larger: whatever mixture
 * of them, in whatever orders. While a micro of goods gives no more than itself back, such a pack gains only as far as it
 * will still be used behind the horizon; and of that there is so much and no more.
 *
 *   gain ≤ (what may still be used − what the last opened pack leaves for that) × dearest price of a unit × (reward − capital)
 */
export class Filling {
  /** What may still be used behind the horizon of packs that were never opened, µL or mg. */
  private readonly mostUsed: number;
  /** By slot: the dearest price of a unit, and how much of it the capital until the end is. */
  private readonly dearest: Float64Array;
  private readonly tied: Float64Array;

  constructor({ need, packs }: Part, slots: Slots, horizon: Horizon) {
    const width = slots.all.length;
    this.dearest = new Float64Array(width);
    this.tied = new Float64Array(width);
    let most = 0;
    for (const [slot, { supplier, day }] of slots.all.entries()) {
      for (const pack of packs) {
        const { offer, levels, size, arrivals, unopenedDays } = pack;
        if (offer.supplier !== supplier || !isAtPriceOn(pack, day)) continue;
        const arrivesOn = arrivals[day - horizon.start] ?? day;
        const used = usableBehind(need, horizon, arrivesOn + unopenedDays);
        if (used > 0) this.dearest[slot] = Math.max(this.dearest[slot] ?? 0, (levels[0]?.price ?? 0) / size);
        most = Math.max(most, used);
      }
      // What is credited keeps beyond the horizon, so that its money is tied up until then.
      this.tied[slot] = ratePerDay(horizon) * (horizon.end - day);
    }
    this.mostUsed = most;
  }

  /** What a unit can gain at most, at these prices. Micros for a µL or a mg. */
  rate({ reward }: Prices): number {
    let best = 0;
    for (let slot = 0; slot < reward.length; slot++) {
      const gain = (this.dearest[slot] ?? 0) * ((reward[slot] ?? 0) - (this.tied[slot] ?? 0));
      if (gain > best) best = gain;
    }
    return best;
  }

  /** The same for all that an opened pack leaves to be used. */
  gain(rate: number, keeps: number): number {
    return rate * Math.max(0, this.mostUsed - keeps);
  }
}
