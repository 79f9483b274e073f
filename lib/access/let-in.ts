import 'server-only';
import { isNew } from '@/shared/api/import-bodies';
import { DEVICE_SHOP } from '@/shared/device-shop';
import { type Asker, judged, type Refused } from './asker';
import type { May } from './may';
import type { ShownCookie } from './session-cookie';

/**
 * Whether whoever asks may do something with the shops that the request names, or with the one that the device works in.
 *
 * Gives    null when they may
 */
export function letIn(asker: Asker, may: May, named: readonly string[], cookie: ShownCookie): Refused | null {
  if (named.length > 0) return judged(asker, may, named);
  const remembered = cookie(DEVICE_SHOP) ?? '';
  const isTheirs = asker.kind === 'person' && asker.person.roles.has(remembered);
  return judged(asker, may, isTheirs ? [remembered] : []);
}

/** The shops that what was sent names: one that it is about, and one that a file goes into. */
export function shopsNamedIn(sent: unknown): string[] {
  if (typeof sent !== 'object' || sent === null) return [];
  const named = ['shop', 'into'].flatMap((field): unknown[] => [Reflect.get(sent, field)].flat());
  return named.filter((shop): shop is string => typeof shop === 'string' && shop !== '' && !isNew(shop));
}
