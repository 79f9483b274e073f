import { z } from 'zod';

/** Which shop to look at in this browser. */
export const ShowShop = z.strictObject({ shop: z.string().min(1).max(100) });
