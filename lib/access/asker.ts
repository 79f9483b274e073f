import { beyondLoopback } from '@/lib/door/allowed-hosts';
import { ROLE_WORDS, type Role } from '@/shared/access/roles';
import { has, isForAnybody, type May, rolesWith } from './may';

/** Whoever sends a request. */
export type Asker =
  /** Somebody at this machine, in a shop that nobody owns yet: everything is open, as before there was sign-in. */
  | { kind: 'unowned' }
  | { kind: 'person'; person: SignedIn }
  /** Nobody who is known here. `why` decides where they are sent. */
  | { kind: 'stranger'; why: 'no-session' | 'no-owner' | 'unknown' };

/** A person with a session that holds. */
export type SignedIn = {
  id: string;
  name: string;
  sessionId: string;
  deviceId: string;
  /** The role in each shop of this person. */
  roles: ReadonlyMap<string, Role>;
};

/** Why a request is not let in. */
export type Refused = { code: 'not-signed-in' | 'no-owner-yet' } | { code: 'not-allowed'; needs: readonly string[] };

/**
 * Whether whoever asks may do something.
 *
 * Takes    who asks, what for, and the shops that it is about; with none named it may be in any shop of theirs
 * Gives    null when they may
 */
export function judged(asker: Asker, may: May, shops: readonly string[]): Refused | null {
  if (may === 'open') return null;
  if (asker.kind === 'unowned') return null;
  if (asker.kind === 'stranger' && asker.why === 'no-owner') return { code: 'no-owner-yet' };
  if (may === 'link') return null;
  if (may === 'machine' && !beyondLoopback()) return null;
  if (asker.kind === 'stranger') return { code: 'not-signed-in' };
  if (isForAnybody(may)) return null;
  const { roles } = asker.person;
  const isIn = (shop: string): boolean => {
    const role = roles.get(shop);
    return role !== undefined && has(role, may);
  };
  const isAllowed = shops.length > 0 ? shops.every(isIn) : [...roles.keys()].some(isIn);
  return isAllowed ? null : { code: 'not-allowed', needs: rolesWith(may).map((role) => ROLE_WORDS[role].name) };
}

/** The shops that somebody may see anything of; null for all there are. */
export function shopsOf(asker: Asker): ReadonlySet<string> | null {
  if (asker.kind === 'unowned') return null;
  return new Set(asker.kind === 'person' ? asker.person.roles.keys() : []);
}
