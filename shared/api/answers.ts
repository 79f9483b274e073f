import { z } from 'zod';

const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
const instant = z.string().regex(/^\d{4}-\d{2}-\d{2}T[\d:.]+(Z|[+-]\d{2}:\d{2})$/);
const money = z.string().regex(/^-?\d+\.\d{6}$/);
const unit = z.enum(['mL', 'g']);

const spraying = z.strictObject({
  program: z.string(),
  recipe: z.string(),
  benches: z.array(z.string()),
  date: day,
  startsAt: instant,
  endsAt: instant,
  sprayMl: z.number().nullable(),
  plants: z.number().int(),
  fills: z.array(z.strictObject({ ml: z.number() })).nullable(),
  ingredients: z.array(
    z.strictObject({ product: z.string(), amount: z.number().nullable(), unit, cost: money.nullable() }),
  ),
  materialCost: money.nullable(),
  labourCost: money.nullable(),
  costPerPlant: money.nullable(),
  costPerLitre: money.nullable(),
  reopensAt: instant.nullable(),
});

const week = z.strictObject({
  week: day,
  need: z.number().nullable().describe('Null as soon as one amount of the week is unknown.'),
  needAtLeast: z.number().describe('The part of the need that is known. The columns beside it are those of this part.'),
  used: z.number(),
  short: z.number(),
  wasted: z.number(),
  received: z.number(),
  closing: z.number(),
});

const product = z.strictObject({
  product: z.string(),
  unit,
  onHand: z.number(),
  usable: z.number(),
  weeks: z.array(week),
  runsOutOn: day.nullable().describe('Null: not within the weeks, or not known where unknownSince is a day.'),
  unknownSince: day.nullable().describe('The day of the first spraying that takes an unknown amount.'),
  orderBy: day.nullable(),
  weeksUntilReorder: z.number().int().nullable(),
  wasteCost: money.nullable(),
});

const flag = z.strictObject({
  severity: z.enum(['stop', 'warn', 'note']),
  rule: z.string(),
  on: day,
  program: z.string().nullable(),
  benches: z.array(z.string()),
  product: z.string().nullable(),
  message: z.string(),
});

const flagAhead = flag.extend({
  days: z.array(day).optional().describe('With flags=once: every day that it stands on; `on` is the first.'),
});

/** What nobody entered, and what is taken for it. */
export const assumed = z
  .array(z.strictObject({ path: z.string(), taken: z.string() }))
  .describe('What nobody entered, by its place in the shop file, and what is taken for it.');

/** The plan, as `GET /api/v1/plan` and `shop plan` give it. */
export const PlanAnswer = z.strictObject({
  from: day,
  weeks: z.number().int(),
  sprayings: z.array(spraying),
  products: z.array(product),
  totals: z.strictObject({
    materialCost: money,
    labourCost: money,
    wasteCost: money,
    unknownCosts: z.number().int().describe('Sprayings whose material cost is unknown, and not in the sum.'),
    unknownLabour: z.number().int().describe('Sprayings whose labour cost is unknown, and not in the sum.'),
    unknownWaste: z.number().int().describe('Wasted rests whose cost is unknown, and not in the sum.'),
  }),
  flags: z.array(flagAhead),
  assumed,
});

const acid = z.strictObject({ product: z.string(), amount: z.number().nullable(), unit });

/** A mix sheet, as `GET /api/v1/mix` and `shop mix` give it. */
export const MixAnswer = z.strictObject({
  ml: z.number(),
  steps: z.array(
    z.strictObject({
      order: z.number().int(),
      product: z.string(),
      amount: z.number().nullable(),
      unit,
      measured: z.number().nullable(),
      measuredWith: z.string().nullable(),
      errorPercent: z.number().nullable(),
      why: z.string(),
    }),
  ),
  strength: z.array(z.strictObject({ substance: z.string(), mgPerL: z.number().nullable() })),
  elements: z.array(z.strictObject({ element: z.string(), mgPerL: z.number().nullable() })),
  pH: z.strictObject({
    before: z.number().nullable(),
    target: z.number().nullable(),
    acidMeqPerL: z.number().nullable(),
    acids: z.array(acid),
    own: z
      .strictObject({
        products: z.array(z.string()),
        pH: z.number().nullable(),
        acidMeqPerL: z.number().nullable(),
        acids: z.array(acid),
      })
      .optional()
      .describe(
        'Only where the recipe itself pours an acid: the pH that it brings about, and what its target takes beside it.',
      ),
  }),
  reiHours: z.number().nullable(),
  protectiveEquipment: z.array(z.string()),
  cost: money.nullable(),
  flags: z.array(flag),
  assumed,
});

/** Which benches are closed, as `GET /api/v1/keepout` and `shop keepout` give it. */
export const KeepoutAnswer = z.strictObject({
  now: instant,
  benches: z.array(
    z.strictObject({
      bench: z.string(),
      state: z.enum(['open', 'closed', 'unknown']),
      until: instant.nullable(),
      because: z.array(z.string()),
    }),
  ),
});

/** A value with its unit. Which fields it has follows from its kind. */
const shown = z.looseObject({ kind: z.string() });

/** How a figure was reached: the rule in words, and every input with where it came from. */
export const WorkingAnswer = z.strictObject({
  figure: z.string(),
  title: z.string(),
  value: shown,
  rule: z.string(),
  steps: z.array(z.strictObject({ label: z.string(), value: shown, from: z.string(), figure: z.string().nullable() })),
  toEnter: z
    .array(z.strictObject({ words: z.string(), at: z.looseObject({ of: z.string() }) }))
    .optional()
    .describe('What to enter before all of it is known.'),
});

const fault = z.strictObject({ path: z.string(), message: z.string() });
const named = z.strictObject({ id: z.string(), name: z.string().nullable() });
const differing = z.strictObject({ field: z.string(), from: z.unknown(), to: z.unknown() });
const collectionChange = z.strictObject({
  added: z.array(named),
  changed: z.array(named.extend({ fields: z.array(differing) })),
  unchanged: z.array(named),
  leftAlone: z.array(named),
});

/** What an import would do. `fingerprint` goes into the import itself; null for a new shop. */
export const PreviewAnswer = z.strictObject({
  name: z.string(),
  comparison: z.strictObject({
    settings: z.array(differing),
    collections: z.record(z.string(), collectionChange),
    faults: z.array(fault),
  }),
  fingerprint: z.string().nullable(),
});

/** What an import did. */
export const ImportAnswer = z.strictObject({
  shopId: z.string(),
  added: z.number().int(),
  changed: z.number().int(),
});

/** What `POST /api/v1/mix/finish` answers. */
export const FinishedMix = z.object({
  application: z.string().describe('The id of the record.'),
  cost: z.number().nullable().describe('What the products in it cost as drawn, in millionths; null when not known.'),
});
