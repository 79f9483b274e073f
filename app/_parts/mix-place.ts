import type { MixProgress } from '@/shared/mix/mix-progress';

/** Where a mix that was begun on this device is gone on with. What stands after the mark # never leaves the device. */
export const mixPlace = ({ plan, commandId }: Pick<MixProgress, 'plan' | 'commandId'>): string =>
  `/mix/do?${plan.query}#${commandId}`;
