import { z } from 'zod';
import { Day } from '../time/day';
import { Zone } from '../time/zone';

const id = z.string().min(1).max(100);
const named = z.object({ id, name: z.string() });
const whole = z.int().min(0);

/** A bottle by where it stands in the books, and as its label names it. */
const PlanBottle = z.object({
  lotId: id,
  place: whole,
  label: z.string(),
  code: z.string(),
  keptIn: z.string().nullable(),
  opened: z.boolean(),
  /** µL or mg that the books have in it. */
  left: whole,
  /** The last day on which it may be used, in words, where that is past; null where it is not. */
  expired: z.string().nullable().default(null),
});
export type PlanBottle = z.infer<typeof PlanBottle>;

/** A product with every bottle of it that is not empty, those that are to be used first in front. */
const PlanProduct = z.object({
  ...named.shape,
  form: z.enum(['liquid', 'powder']),
  densityGPerMl: z.number().nullable(),
  gramsPerTeaspoon: z.number().nullable(),
  liquid: z.enum(['feed', 'insect', 'fungus', 'other']),
  /** Null: not known, so keep out. */
  reiMinutes: whole.nullable(),
  bottles: z.array(PlanBottle),
});
export type PlanProduct = z.infer<typeof PlanProduct>;

const PlanPour = z.object({
  product: id,
  /** Whole µL or mg that go into each fill, as they are measured; null when nobody knows how much it is. */
  perFill: whole.nullable(),
  /** What is measured, with what, and what it would be exactly. */
  measuredText: z.string().nullable(),
  measuredWith: z.string().nullable(),
  /** The mark on the tool: "1/4 tsp", "10 drops", "8 mL". Null where there is none. */
  markText: z.string().nullable().default(null),
  /** The same mark with its figure apart, to be read large; null in a plan from before this was told. */
  mark: z.object({ figure: z.string(), unit: z.string() }).nullable().default(null),
  /** What it is measured with, to be laid ready; null in a plan from before this was told. */
  tools: z.array(z.string()).nullable().default(null),
  exactText: z.string().nullable(),
  errorText: z.string().nullable(),
  missing: z.string().nullable(),
  why: z.string(),
  /** Why it is not poured as the nearest measure has it, where that is far off: whoever pours says how it was measured. */
  farOff: z.string().nullable().default(null),
  /** What to do where measuring is off by more than it should be; null where it is not. */
  coarse: z.string().nullable(),
  shortText: z.string().nullable(),
  costMicros: whole.nullable(),
  /** The most that its label allows in each fill, µL or mg; null where nothing limits it. */
  most: whole.nullable().default(null),
});
export type PlanPour = z.infer<typeof PlanPour>;

const PlanAcid = z.object({
  product: id,
  /** Two thirds of the estimate for one fill, as the shop's tools measure it; null when it is not known. */
  firstText: z.string().nullable(),
  /** What that is measured with; null when nothing there measures it. */
  firstWith: z.string().nullable().default(null),
  /** The name of that measure; null when nothing there measures it, and in a plan from before this was told. */
  firstTool: z.string().nullable().default(null),
  /** What the whole is estimated at for one fill. */
  allText: z.string().nullable(),
  expectedPh: z.string().nullable(),
  missing: z.string().nullable(),
});
export type PlanAcid = z.infer<typeof PlanAcid>;

/**
 * A mix as the one who makes it needs it, complete: whatever happens to the network between the first pour and the last,
 * nothing has to be asked for.
 */
export const MixPlan = z.object({
  /** The address that asked for it, after the question mark. */
  query: z.string(),
  shopId: id,
  zone: Zone,
  units: z.enum(['us', 'metric']),
  currency: z.string(),
  /** When it was worked out, in milliseconds since 1970. */
  asOf: z.number(),
  /** The name that entries from this browser are signed with. */
  by: z.string(),
  recipe: named,
  planned: z.object({ program: id, on: Day }).nullable(),
  /** Planned sprayings that it might be, where none is named. */
  near: z.array(z.object({ program: id, on: Day, text: z.string() })).default([]),
  benches: z.array(named),
  /** Every bench of the shop, for whoever sprayed others than were planned. */
  shopBenches: z.array(named),
  plantsText: z.string().nullable(),
  sprayText: z.string(),
  fills: whole.min(1),
  /** Whole µL of one fill. */
  fill: whole,
  fillText: z.string(),
  /** The part of the sprayer that one fill takes, 0 to 1. */
  level: z.number(),
  waterFirstText: z.string(),
  sprayer: z.string(),
  signalWord: z.string().nullable(),
  equipment: z.array(z.string()),
  equipmentUnknown: z.array(z.string()),
  /** Null: not known, so keep out. */
  rei: z.string().nullable(),
  reiMinutes: whole.nullable(),
  useWithin: z.string().nullable(),
  useWithinMinutes: whole.nullable(),
  stops: z.array(z.object({ rule: z.string(), messages: z.array(z.string()) })),
  warnings: z.array(z.string()),
  pours: z.array(PlanPour),
  pH: z
    .object({
      target: z.string(),
      /** Without the acid that is still to be added; what the recipe pours itself is counted. */
      before: z.string().nullable(),
      message: z.string().nullable(),
      /** How far the recipe's own acid brings it, and whether more is to be added; null without one. */
      own: z.string().nullable().default(null),
      /** What moves it by an amount that no estimate counts. */
      unreckoned: z.string().nullable().default(null),
    })
    .nullable(),
  acids: z.array(PlanAcid),
  /** The pH adjuster that the recipe itself has in it, to go on with by drops; null without one. */
  ownAcid: id.nullable(),
  burn: z.string().nullable(),
  /** Every product that could go in, so that another can be added where there is no network. */
  products: z.array(PlanProduct),
  /** Benches that could take what is left over, as the shop stood when this was worked out. */
  leftover: z.array(z.object({ ...named.shape, roomText: z.string(), inProgram: z.boolean() })),
  plannedCost: whole.nullable(),
});
export type MixPlan = z.infer<typeof MixPlan>;

/** A product of a mix. Throws RangeError when the plan names one that it does not carry. */
export function productIn({ products }: MixPlan, product: string): PlanProduct {
  const found = products.find(({ id: one }) => one === product);
  if (!found) throw new RangeError(`mix: the plan has no product "${product}"`);
  return found;
}

/** Which bottle: its lot and its place there, in one text. */
export const bottleKey = ({ lotId, place }: { lotId: string; place: number }): string => `${place} ${lotId}`;
