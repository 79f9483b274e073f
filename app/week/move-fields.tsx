import type { JustMoved } from '@/lib/views/spraying-move';
import type { Day } from '@/shared/time/day';

type MoveFieldsProps = { move: JustMoved['move']; commandId: string; from: Day };

/** Which spraying is moved, and where to come back to. */
export const MoveFields = ({ move: { shop, program, on }, commandId, from }: MoveFieldsProps) => (
  <>
    <input type="hidden" name="commandId" value={commandId} />
    <input type="hidden" name="shop" value={shop} />
    <input type="hidden" name="program" value={program} />
    <input type="hidden" name="on" value={on} />
    <input type="hidden" name="from" value={from} />
  </>
);
