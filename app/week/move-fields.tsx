import type { JustMoved } from '@/lib/views/spraying-move';
import type { Day } from '@/shared/time/day';
import { HiddenFields } from '../_parts/hidden-fields';

type MoveFieldsProps = { move: JustMoved['move']; commandId: string; from: Day };

/** Which spraying is moved, and where to come back to. */
export const MoveFields = ({ move: { shop, program, on }, commandId, from }: MoveFieldsProps) => (
  <HiddenFields of={{ commandId, shop, program, on, from }} />
);
