import { z } from 'zod';
import { readClockTime } from '../time/clock-time';
import { readDay } from '../time/day';
import { commandId, shopId } from './command-fields';
import { readBy } from './read-by';

/** Which spraying of which program, by the day on which the program itself has it, and where it goes. */
const spraying = {
  program: z.string().min(1).max(64),
  on: readBy(readDay),
  to: readBy(readDay),
  /** Minutes since midnight; read as 17:30. */
  at: readBy(readClockTime),
};

/** Move a planned spraying to another day, another time, or both. */
export const MoveSpraying = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  ...spraying,
  /** The first day that the page shows, to come back to. */
  from: readBy(readDay),
});

/** What moving it would do, asked before it is done. */
export const MoveQuestion = z.strictObject({ ...spraying, shop: shopId() });
