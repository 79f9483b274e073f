import type { ShopFile } from '@/shared/shop-file/contract';
import type { Day } from '@/shared/time/day';
import type { PurchasePlan } from '../engine/buying/purchase-plan';
import type { Progress } from '../engine/buying/solver';
import type { CurvePoint, Equivalents } from '../engine/equivalents/equivalents';

/** What a thread of its own can be asked: whatever needs the solver. `seconds` is how long it may search. */
export type Asked = { file: ShopFile; today: Day; weeks: number; seconds: number } & (
  | { what: 'purchase plan' }
  | { what: 'equivalents'; recipe: string; product: string }
  /** The allowed candidates' season costs at other uses than planned, in the order of these products. */
  | { what: 'season curve'; recipe: string; product: string; candidates: string[] }
);

/** What it answers. Null for a recipe or a product that is not there, or has no substance that is known. */
export type Answers = { 'purchase plan': PurchasePlan; equivalents: Equivalents | null; 'season curve': CurvePoint[] };

/** What the thread is started with: always an object, because a bundler keeps nothing else. */
export type Start = { asked: Asked; stop: Int32Array };

/** What it says: how far it is, and last of all what it found. */
export type Said =
  | { progress: Progress }
  | { answer: Answers[Asked['what']] }
  | { tooLarge: true }
  | { tooMuch: string };
