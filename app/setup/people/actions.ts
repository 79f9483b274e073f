'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { invite, inviteAgain, takeBackInvitation } from '@/lib/access/invitations';
import { changeRole, letBack, loseDevice, stopPerson } from '@/lib/access/who-works-here';
import { clock } from '@/lib/clock';
import { doorAction } from '@/lib/door/door-action';
import { ROLE_WORDS } from '@/shared/access/roles';
import type { FormState } from '@/shared/forms/form-state';
import { DeviceForm, InviteForm, PersonForm, RoleForm, TakeBackInvitation } from '@/shared/forms/people';
import { accept, type Outcome } from '@/shared/outcome';

/** The page that shows the link of an invitation once, as text and as a square code. */
const show = (token: string): never => redirect(`/setup/people/show?code=${token}`);

function done<T>(outcome: Outcome<T>, say: (value: T) => string): Outcome<{ message: string }> {
  if (!outcome.ok) return outcome;
  revalidatePath('/', 'layout');
  return accept({ message: say(outcome.value) });
}

const inviting = doorAction({ may: 'own', form: InviteForm }, async ({ shop, name, role }, by) => {
  const made = await invite({ shopId: shop, name, role, by }, clock);
  return made.ok ? show(made.value.token) : made;
});

/** Invite somebody to work here. */
export async function invitePersonAction(state: FormState, form: FormData): Promise<FormState> {
  return inviting(state, form);
}

const invitingAgain = doorAction({ may: 'own', form: PersonForm }, async ({ shop, person }, by) => {
  const made = await inviteAgain({ shopId: shop, personId: person, by }, clock);
  return made.ok ? show(made.value.token) : made;
});

/** Make a link by which somebody who works here chooses a new password. */
export async function newPasswordAction(state: FormState, form: FormData): Promise<FormState> {
  return invitingAgain(state, form);
}

const takingBack = doorAction({ may: 'own', form: TakeBackInvitation }, async ({ shop, invitation }) => {
  await takeBackInvitation({ shopId: shop, id: invitation });
  return done(accept(null), () => 'The invitation is taken back. Its link lets nobody in any more.');
});

/** Take an invitation back. */
export async function takeBackInvitationAction(state: FormState, form: FormData): Promise<FormState> {
  return takingBack(state, form);
}

const changing = doorAction({ may: 'own', form: RoleForm }, async ({ shop, person, role }, by) =>
  done(
    await changeRole({ shopId: shop, personId: person, role, by }, clock),
    () => `From now on: ${ROLE_WORDS[role].name}.`,
  ),
);

/** Give somebody another role. */
export async function changeRoleAction(state: FormState, form: FormData): Promise<FormState> {
  return changing(state, form);
}

const stopping = doorAction({ may: 'own', form: PersonForm }, async ({ shop, person }, by) =>
  done(await stopPerson({ shopId: shop, personId: person, by }, clock), ({ isStopped }) =>
    isStopped
      ? 'Signed out everywhere, and cannot sign in any more.'
      : 'Signed out everywhere, and not in this shop any more. In a shop of another owner nothing changed.',
  ),
);

/** Somebody does not work here any more. */
export async function stopPersonAction(state: FormState, form: FormData): Promise<FormState> {
  return stopping(state, form);
}

const lettingBack = doorAction({ may: 'own', form: PersonForm }, async ({ shop, person }, by) =>
  done(
    await letBack({ shopId: shop, personId: person, by }, clock),
    () => 'May sign in again, with the password of before.',
  ),
);

/** Somebody works here again. */
export async function letBackAction(state: FormState, form: FormData): Promise<FormState> {
  return lettingBack(state, form);
}

const losing = doorAction({ may: 'own', form: DeviceForm }, async ({ shop, device }, by) =>
  done(
    await loseDevice({ shopId: shop, deviceId: device, by }, clock),
    ({ name }) => `${name} is signed out. What it held back unsent stays on it.`,
  ),
);

/** A device is lost. */
export async function loseDeviceAction(state: FormState, form: FormData): Promise<FormState> {
  return losing(state, form);
}
