import 'server-only';
import type { Clock } from '@/lib/clock';
import type { Rows } from '@/lib/data/database';
import { endSessions, giveRole, inPeople, noteAccess } from '@/lib/data/save-people';
import { toStored } from '@/lib/data/whole';
import type { Role } from '@/shared/access/roles';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import type { ByWhom } from './invitations';
import { ownsAllShopsOf } from './owns-all';

type About = { shopId: string; personId: string; by: ByWhom };

/**
 * Give somebody who works in a shop another role. It holds from the next tap on.
 *
 * Refuses  'not-found' for nobody of this shop; 'faults' for the last owner
 */
export function changeRole(
  { shopId, personId, role, by }: About & { role: Role },
  clock: Clock,
): Promise<Outcome<null>> {
  return ofPerson({ shopId, personId, by }, async (rows, was) => {
    if (was === 'owner' && role !== 'owner' && (await isLastOwner(rows, shopId, personId))) return lastOwner;
    const now = clock.now();
    await giveRole(rows, { shopId, personId, role, givenBy: by.actor, givenAt: now });
    await noteAccess(rows, {
      ...{ personId, what: 'role', about: role },
      inShop: shopId,
      actor: by.actor,
      recordedAt: now,
    });
    return accept(null);
  });
}

/**
 * Somebody does not work here any more: every session ends at once. Whoever also works in a shop of another owner only
 * loses the role in this one.
 *
 * Gives    whether they cannot sign in at all from now on
 * Refuses  'not-found' for nobody of this shop; 'faults' for the last owner
 */
export function stopPerson({ shopId, personId, by }: About, clock: Clock): Promise<Outcome<{ isStopped: boolean }>> {
  return ofPerson({ shopId, personId, by }, async (rows, was) => {
    if (was === 'owner' && (await isLastOwner(rows, shopId, personId))) return lastOwner;
    const now = clock.now();
    const isStopped = await ownsAllShopsOf(rows, personId, by);
    if (isStopped) await touch(rows, personId, { disabledAt: toStored(now) });
    else {
      await rows.membership.delete({ where: { shopId_personId: { shopId, personId } } });
      await touch(rows, personId, {});
    }
    await endSessions(rows, { personId });
    await noteAccess(rows, { personId, what: 'stopped', inShop: shopId, actor: by.actor, recordedAt: now });
    return accept({ isStopped });
  });
}

/** Somebody who was stopped works here again, with the password and the role of before. */
export function letBack({ shopId, personId, by }: About, clock: Clock): Promise<Outcome<null>> {
  return ofPerson({ shopId, personId, by }, async (rows) => {
    if (!(await ownsAllShopsOf(rows, personId, by))) return refuse({ code: 'not-found', what: 'person', id: personId });
    await touch(rows, personId, { disabledAt: null });
    const note = { personId, what: 'back', inShop: shopId, actor: by.actor, recordedAt: clock.now() };
    await noteAccess(rows, note);
    return accept(null);
  });
}

/** A device is lost: whoever has it is signed out at once, and it is known no more. */
export function loseDevice(
  { shopId, deviceId, by }: { shopId: string; deviceId: string; by: ByWhom },
  clock: Clock,
): Promise<Outcome<{ name: string }>> {
  return inPeople(async (rows) => {
    const device = await rows.device.findUnique({ where: { id: deviceId } });
    const personId = device?.personId ?? null;
    const member = personId && (await rows.membership.findUnique({ where: { shopId_personId: { shopId, personId } } }));
    if (!device || !personId || !member) return refuse({ code: 'not-found', what: 'device', id: deviceId });
    const now = clock.now();
    await rows.device.update({ where: { id: deviceId }, data: { lostAt: toStored(now) } });
    await endSessions(rows, { deviceId });
    const note = { personId, what: 'device lost', about: device.name, inShop: shopId, actor: by.actor };
    await noteAccess(rows, { ...note, recordedAt: now });
    return accept({ name: device.name });
  });
}

/** Do something about somebody of a shop, who has some role there. */
const ofPerson = <T>(
  { shopId, personId }: About,
  work: (rows: Rows, role: string) => Promise<Outcome<T>>,
): Promise<Outcome<T>> =>
  inPeople(async (rows) => {
    const member = await rows.membership.findUnique({ where: { shopId_personId: { shopId, personId } } });
    return member ? work(rows, member.role) : refuse({ code: 'not-found', what: 'person', id: personId });
  });

const lastOwner = refuse({
  code: 'faults',
  faults: [{ path: 'person', message: 'The shop needs an owner. Make somebody else an owner first.' }],
});

/** Whether nobody else owns a shop who can sign in. */
async function isLastOwner(rows: Rows, shopId: string, personId: string): Promise<boolean> {
  const others = { shopId, role: 'owner', personId: { not: personId }, person: { disabledAt: null } };
  return (await rows.membership.count({ where: others })) === 0;
}

async function touch(rows: Rows, personId: string, data: { disabledAt?: bigint | null }): Promise<void> {
  await rows.person.update({ where: { id: personId }, data: { ...data, changes: { increment: 1 } } });
}
