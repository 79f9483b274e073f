import 'server-only';
import { isRole, ROLE_WORDS, type Role } from '@/shared/access/roles';
import { instantOf } from '@/shared/time/instant';
import { showInstant } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { invitationsOf, peopleIn } from '../data/people-lists';
import { shopNow } from './house';

type PersonSeen = {
  id: string;
  name: string;
  role: Role;
  isStopped: boolean;
  isYou: boolean;
  devices: { id: string; name: string; seen: string; isLost: boolean; isSignedIn: boolean }[];
};

export type PeopleScreen = {
  shop: { id: string; name: string };
  people: PersonSeen[];
  invitations: { id: string; name: string; role: string; until: string; madeBy: string }[];
};

/**
 * Who works in the shop of this device, on which devices, and who is invited. Null when there is no shop.
 *
 * Takes   who looks, to be told from the others
 */
export async function peopleScreen(clock: Clock, you: string | null): Promise<PeopleScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const { id, shop, now } = here;
  const when = (at: number) => showInstant(instantOf(at), shop.zone);
  const [people, invitations] = [await peopleIn(id, now), await invitationsOf(id, now)];
  return {
    shop: { id, name: shop.name },
    people: people.map(({ devices, ...person }) => ({
      ...person,
      isYou: person.id === you,
      devices: devices.map(({ seenAt, ...device }) => ({ ...device, seen: when(seenAt) })),
    })),
    invitations: invitations.map(({ id, name, role, endsAt, madeBy }) => ({
      ...{ id, name, madeBy, until: when(endsAt) },
      role: role !== null && isRole(role) ? ROLE_WORDS[role].name : 'a new password',
    })),
  };
}
