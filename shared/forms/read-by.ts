import { z } from 'zod';
import type { Reading } from '../outcome';

/** A text that is sent, read as the shop reads it everywhere, with its own sentence when it cannot be. */
export const readBy = <T>(read: (text: string) => Reading<T>, missing?: string) =>
  z.string(missing).transform((text, context) => {
    const reading = read(text);
    if (reading.ok) return reading.value;
    context.addIssue(reading.message);
    return z.NEVER;
  });
