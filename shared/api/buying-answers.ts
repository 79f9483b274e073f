import { z } from 'zod';
import { assumed } from './answers';

const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
const money = z.string().regex(/^-?\d+\.\d{6}$/);

/** What to buy, as `GET /api/v1/buy` and `shop buy` give it. */
export const BuyAnswer = z.strictObject({
  orders: z.array(
    z.strictObject({
      supplier: z.string(),
      on: day,
      lines: z.array(
        z.strictObject({ offer: z.string(), product: z.string(), count: z.number().int().min(1), cost: money }),
      ),
      freight: money.nullable(),
    }),
  ),
  late: z.array(z.strictObject({ product: z.string(), on: day, amount: z.number() })),
  cost: z.strictObject({
    packs: money,
    freight: money,
    capital: money,
    left: money,
    total: money,
    ofWhichWaste: money,
  }),
  habits: z.strictObject({ smallestPack: money, cheapestPerMl: money }),
  proven: z.boolean(),
  gap: z.number().min(0),
  unknown: z
    .array(z.string())
    .describe('Products of which an amount is unknown. Only what is known of them is planned, and nothing is proven.'),
  assumed,
});

/** What could stand in a recipe, as `GET /api/v1/equivalents` and `shop equivalents` give it. */
export const EquivalentsAnswer = z.strictObject({
  substance: z.string(),
  mgPerL: z.number().nullable(),
  candidates: z.array(
    z.strictObject({
      product: z.string(),
      dose: z.number().nullable(),
      doseUnit: z.enum(['mL/L', 'g/L', 'mL/m2', 'g/m2']),
      allowed: z.boolean(),
      reasons: z.array(z.string()),
      costPerGram: money.nullable(),
      costPerLitre: money.nullable(),
      seasonCost: money.nullable(),
      packs: z.array(z.strictObject({ offer: z.string(), count: z.number().int().min(1) })),
      wasteCost: money.nullable(),
      alsoBrings: z.array(z.string()),
    }),
  ),
  best: z.string().nullable(),
  breakEven: z.array(z.strictObject({ between: z.tuple([z.string(), z.string()]), seasonMl: z.number() })),
  assumed,
});
