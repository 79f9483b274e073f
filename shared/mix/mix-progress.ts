import { z } from 'zod';
import { Day } from '../time/day';
import { MixPlan } from './mix-plan';

const id = z.string().min(1).max(100);

/** So much out of one bottle, or out of one that is not in the books (`null`). */
const Part = z.object({
  bottle: z.object({ lotId: id, place: z.int().min(0) }).nullable(),
  /** As it was typed: "4 mL". */
  amount: z.string(),
  heldMore: z.boolean(),
  /** Whether the bottle was empty after it, whatever the books say. */
  ranOut: z.boolean().optional(),
});
export type Part = z.infer<typeof Part>;

/** What went into one fill of one product. With no parts: it was left out. */
const Pour = z.object({
  fill: z.int().min(0),
  product: id,
  parts: z.array(Part),
  /** Whether it is in the tank, or left out for good; else somebody is still changing it. */
  done: z.boolean(),
});
export type Pour = z.infer<typeof Pour>;

/** The acid of one fill: two thirds, and what was dripped in afterwards. */
const AcidPour = z.object({ fill: z.int().min(0), product: id, first: z.string(), more: z.string() });
export type AcidPour = z.infer<typeof AcidPour>;

const Stop = z.object({ rule: z.string(), messages: z.array(z.string()) });

/** Where the whole mix stands with the shop. */
const MIX_STATES = ['mixing', 'to-send', 'sent'] as const;

/** The fields that are typed at the end, as they are typed. */
const ANSWERS = [
  'startedAt',
  'endedAt',
  'sprayed',
  'by',
  'plants',
  'temperature',
  'conditions',
  'leftover',
  'leftoverWent',
] as const;
export type Answer = (typeof ANSWERS)[number];

/** A mix that was begun before somebody was asked how warm it was goes on, and can still say so. */
const asAskedNow = (answers: unknown): unknown =>
  typeof answers === 'object' ? { temperature: '', ...answers } : answers;

/**
 * One mix as far as it has come: everything that is needed to go on with it, and to tell the shop about it. It is plain
 * data, so that it can be kept on the device at every step and taken up again from there.
 */
export const MixProgress = z.object({
  version: z.literal(1),
  /** Made when it was begun. However often and from wherever it is sent, it is one mix. */
  commandId: z.string().regex(/^[0-9a-f]{32}$/),
  begunAt: z.number(),
  plan: MixPlan,
  /** The screen that it is at. */
  at: z.string(),
  ticked: z.array(z.string()),
  pours: z.array(Pour),
  /** Products that were added on the way. */
  added: z.array(id),
  /** Bottles that somebody took instead, by product, the first to be used first. */
  chosen: z.record(z.string(), z.array(z.object({ lotId: id, place: z.int().min(0) }))),
  acids: z.array(AcidPour),
  readings: z.array(z.object({ fill: z.int().min(0), pH: z.string() })),
  /** How many fills there really were, once somebody said that it was fewer; null: all of them. */
  lastFill: z.int().min(0).nullable(),
  reasons: z.record(z.string(), z.string()),
  /** Rules that the shop asked about when it was sent. */
  asked: z.array(Stop),
  benches: z.array(id),
  leftoverBenches: z.array(id),
  /** Whether it is to be recorded beside its planned spraying, which was found done already. */
  apart: z.boolean(),
  /** Which planned spraying a mix begun without one was, as somebody said at the end; null: none, it is an extra mix. */
  turn: z.object({ program: id, on: Day }).nullable().default(null),
  answers: z.preprocess(asAskedNow, z.record(z.enum(ANSWERS), z.string())),
  /** When the first product went into each fill, in milliseconds since 1970: its time runs from there. */
  mixedSince: z.array(z.object({ fill: z.int().min(0), at: z.number() })),
  /** When spraying began by the shop's clock, in milliseconds since 1970. */
  sprayingSince: z.number().nullable(),
  /** When the last plant was sprayed: up to the minute that is running. */
  sprayingUntil: z.number().nullable(),
  /** By how much the device's clock was ahead of the shop's at the first of these taps, in milliseconds; null: not known. */
  deviceAhead: z.number().nullable().default(null),
  /** What the shop knows of the spraying, as it was told last; null: nothing. */
  told: z.string().nullable().default(null),
  state: z.enum(MIX_STATES),
  refusal: z
    .object({
      /** What kind of refusal it is; null for one that is not the shop's. */
      code: z.string().nullable().default(null),
      message: z.string(),
      faults: z.array(z.object({ path: z.string(), message: z.string() })),
      /** The token of the question whether a bench may open earlier; null where that is not asked. */
      confirm: z.string().nullable().default(null),
    })
    .nullable(),
  /** The answer to that question: the token, and how the person knows. */
  sure: z.object({ token: z.string(), reason: z.string() }).nullable().default(null),
  /** The record, once it is there; without an id when another device sent this mix with other figures. */
  finished: z.object({ application: z.string().nullable() }).nullable(),
});
export type MixProgress = z.infer<typeof MixProgress>;

/** A mix at its very beginning. */
export function beginMix(plan: MixPlan, commandId: string, now: number): MixProgress {
  return {
    ...{ version: 1, commandId, begunAt: now, plan },
    at: plan.stops.length > 0 ? 'stops' : 'wear',
    ...{ ticked: [], pours: [], added: [], chosen: {}, acids: [], readings: [], lastFill: null },
    ...{ reasons: {}, asked: [], benches: plan.benches.map(({ id: bench }) => bench), leftoverBenches: [] },
    ...{ apart: false, turn: null },
    answers: {
      ...{ startedAt: '', endedAt: '', sprayed: '', by: plan.by, plants: plan.plantsText ?? '' },
      ...{ temperature: '', conditions: '', leftover: '', leftoverWent: '' },
    },
    ...{
      mixedSince: [],
      sprayingSince: null,
      sprayingUntil: null,
      deviceAhead: null,
      told: null,
      state: 'mixing',
      refusal: null,
      sure: null,
      finished: null,
    },
  };
}

/** A mix as it was kept on a device. Null when it is none, or of a form that is no longer understood. */
export function readProgress(kept: string): MixProgress | null {
  try {
    const progress = MixProgress.safeParse(JSON.parse(kept));
    return progress.success ? progress.data : null;
  } catch {
    return null;
  }
}
