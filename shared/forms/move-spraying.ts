import { z } from 'zod';
import type { Reading } from '../outcome';
import { readClockTime } from '../time/clock-time';
import { readDay } from '../time/day';
import { commandId, shopId } from './command-fields';

const readAs = <T>(read: (text: string) => Reading<T>) =>
  z.string().transform((text, context) => {
    const reading = read(text);
    if (reading.ok) return reading.value;
    context.addIssue(reading.message);
    return z.NEVER;
  });

/** Which spraying of which program, by the day on which the program itself has it, and where it goes. */
const spraying = {
  program: z.string().min(1).max(64),
  on: readAs(readDay),
  to: readAs(readDay),
  /** Minutes since midnight; read as 17:30. */
  at: readAs(readClockTime),
};

/** Move a planned spraying to another day, another time, or both. */
export const MoveSpraying = z.strictObject({
  commandId: commandId(),
  shop: shopId(),
  ...spraying,
  /** The first day that the page shows, to come back to. */
  from: readAs(readDay),
});

/** What moving it would do, asked before it is done. */
export const MoveQuestion = z.strictObject({ ...spraying, shop: shopId() });
