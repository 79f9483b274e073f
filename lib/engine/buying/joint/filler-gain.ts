import type { Part } from '../baseline-policy';
import type { Horizon } from '../horizon';
import { ratePerDay, usableBehind } from '../pack-use';
import { isAtPriceOn } from '../price-periods';
import type { CandidateOrders } from './candidate-orders';
import type { DualPrices } from './pricing-problem';

/**
 * An upper bound of what fillers can gain for one product at any dual prices: a filler gains only as far as it is used
 * after the horizon, and that use is limited.
 *
 *   gain ≤ (use after the horizon − what the last opened pack covers of it) × highest unit price × (goodsDual − capital)
 */
export class FillerGain {
  /** What may still be used behind the horizon of packs that were never opened, µL or mg. */
  private readonly mostUsed: number;
  /** By slot: the dearest price of a unit, and how much of it the capital until the end is. */
  private readonly dearest: Float64Array;
  private readonly tied: Float64Array;

  constructor({ need, packs }: Part, slots: CandidateOrders, horizon: Horizon) {
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
  rate({ goodsDual }: DualPrices): number {
    let best = 0;
    for (let slot = 0; slot < goodsDual.length; slot++) {
      const gain = (this.dearest[slot] ?? 0) * ((goodsDual[slot] ?? 0) - (this.tied[slot] ?? 0));
      if (gain > best) best = gain;
    }
    return best;
  }

  /** The same for all that an opened pack leaves to be used. */
  gain(rate: number, keeps: number): number {
    return rate * Math.max(0, this.mostUsed - keeps);
  }
}
