import { z } from 'zod';

/** Make a backup now. There is nothing to say. */
export const BackUp = z.strictObject({});
