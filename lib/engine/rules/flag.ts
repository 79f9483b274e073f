import type { Day } from '@/shared/time/day';
import type { ToEnter } from './to-enter';

export type Severity = 'stop' | 'warn' | 'note';

export const RULES = [
  'dose-outside-label',
  'too-many-applications',
  'too-soon',
  'mode-repeated',
  'must-not-mix',
  'ph-outside-range',
  'lot-expired',
  'bench-closed',
  'closed-in-opening-hours',
  'rei-unknown',
  'short',
  'unknown-cost',
  'unknown-expiry',
  'unknown-need',
  'phi-reaches-harvest',
  'oil-near-sulfur',
  'too-hot',
  'mixed-too-long',
  'measured-roughly',
] as const;
export type RuleName = (typeof RULES)[number];

/** The gravest first. */
const GRAVITY: Record<Severity, number> = { stop: 0, warn: 1, note: 2 };
export const byGravity = (a: { severity: Severity }, b: { severity: Severity }): number =>
  GRAVITY[a.severity] - GRAVITY[b.severity];

/** Something a person should know before it happens: which rule, where and when, and what would clear it. */
export type Flag = {
  severity: Severity;
  rule: RuleName;
  on: Day;
  /** Ids; null or empty when the flag is not about one. */
  program: string | null;
  benches: string[];
  product: string | null;
  /** The fact with its numbers, and what would clear it, in whole sentences. */
  message: string;
  /** What would clear it, with where each is entered; left out where the message says all. */
  toEnter?: readonly ToEnter[];
};
