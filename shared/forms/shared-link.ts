import { z } from 'zod';
import { commandId, shopId } from './command-fields';

/** What a secret link can show: the states of the benches for the sales floor, or the calendar. */
const LINK_KINDS = ['board', 'calendar'] as const;
export type LinkKind = (typeof LINK_KINDS)[number];

const sent = { commandId: commandId(), shop: shopId() };

/** Make a secret link of a kind. */
export const MakeLink = z.strictObject({ ...sent, kind: z.enum(LINK_KINDS) });

/** Revoke a secret link. */
export const RevokeLink = z.strictObject({ ...sent, link: z.string().min(1).max(100) });
