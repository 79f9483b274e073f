import type { Refusal } from '@/shared/outcome';

/**
 * Whether a mix whose record is refused was sprayed all the same: a rule said stop and nobody has said why it was passed,
 * the planned spraying has a record already, the books have less in a bottle, or a bench would open earlier. Then its
 * benches are closed, and the record waits for the answer.
 */
export function wasSprayed(refusal: Refusal): boolean {
  if (refusal.code === 'faults') return refusal.faults.every(({ path }) => path.startsWith('passed.'));
  return SPRAYED.has(refusal.code);
}

const SPRAYED: ReadonlySet<Refusal['code']> = new Set(['already-done', 'not-enough-stock', 'opens-earlier']);
