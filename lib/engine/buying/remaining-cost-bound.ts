import { least, type Micros } from '@/shared/quantity/amounts';
import type { Horizon } from './horizon';
import { type Need, toBuy } from './need';
import type { Pack } from './pack';
import { openPack, stillUsed } from './pack-use';

/** Into so many parts each day's need is cut: the more, the nearer the bound comes to the truth. */
const CUTS = 12;

/**
 * The least that it can cost to meet what is not covered yet, for any coverage: a bound that leaves out what could never
 * be part of a cheap plan. No price of an order and no capital is in it, and each pack is as cheap as it ever is.
 *
 * Two bounds, whichever is larger. By the unit: no unit can cost less than the cheapest pack's share. By the pack: each
 * day's need is cut into parts, a pack that is opened anywhere in a part reaches no further than one that is opened at
 * its end, and covering more never makes the rest dearer. The second counts what dies; it holds from the first day on
 * from which every pack comes in time for every day.
 */
export class RemainingCostBound {
  private readonly all: number;
  private readonly perUnit: number;
  /** The ends of the parts, and the bound from anywhere in them. */
  private readonly ends: number[] = [];
  private readonly bounds: number[];

  constructor(
    private readonly need: Need,
    private readonly packs: readonly Pack[],
    private readonly horizon: Horizon,
  ) {
    this.all = toBuy(need);
    this.perUnit = Math.min(...packs.map((pack) => leastPrice(pack) / pack.size));
    for (let part = 0; part < need.days.length * CUTS; part++) this.ends.push(this.endOf(part));
    this.bounds = new Array<number>(this.ends.length + 1).fill(0);
    for (let part = this.ends.length - 1; part >= this.firstSteady() * CUTS; part--) {
      this.bounds[part] = Math.max(this.bounds[part + 1] ?? 0, this.leastFrom(part));
    }
  }

  /** Takes  what is covered, and the place of the needed day in which that ends */
  from(covered: number, place: number): number {
    return Math.max((this.all - covered) * this.perUnit, this.bounds[this.partOf(covered, place)] ?? 0);
  }

  private endOf(part: number): number {
    const cut = part % CUTS;
    const place = (part - cut) / CUTS;
    const [from, to] = [this.need.upTo[place] ?? 0, this.need.upTo[place + 1] ?? 0];
    return from + ((to - from) * (cut + 1)) / CUTS;
  }

  private partOf(covered: number, place: number): number {
    let part = place * CUTS;
    while (part < this.ends.length - 1 && (this.ends[part] ?? 0) < covered) part++;
    return part;
  }

  /** The place of the day from which on every pack comes in time for every day. */
  private firstSteady(): number {
    const { days } = this.need;
    let place = days.length;
    while (place > 0 && this.packs.every(({ ways }) => ways[place - 1]?.before === days.length)) place--;
    return place;
  }

  private leastFrom(part: number): number {
    const place = (part - (part % CUTS)) / CUTS;
    const covered = this.ends[part] ?? 0;
    return this.packs.reduce((best, pack) => {
      const way = pack.ways[place];
      if (!way) return best;
      const use = openPack(this.need, this.horizon, pack, { ...way, covered, place });
      if (use.to >= this.all) {
        const left = pack.size - (this.all - covered);
        const credit = stillUsed(this.need, this.horizon, { ...use, left }) / pack.size;
        return Math.min(best, leastPrice(pack) * (1 - credit));
      }
      return Math.min(best, leastPrice(pack) + (this.bounds[this.partAfter(use.to, part)] ?? 0));
    }, Infinity);
  }

  /** The part in which a coverage ends, or that begins there. */
  private partAfter(covered: number, from: number): number {
    let part = from;
    while (part < this.ends.length && (this.ends[part] ?? 0) <= covered) part++;
    return part;
  }
}

/** What a pack costs at its best quantity break. */
export const leastPrice = ({ levels, offer }: Pack): Micros =>
  levels.reduce((best, { price }) => least(best, price), offer.price);
