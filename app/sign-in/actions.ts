'use server';

import { revalidatePath } from 'next/cache';
import { headers } from 'next/headers';
import { redirect } from 'next/navigation';
import { makeFirstOwner } from '@/lib/access/first-owner';
import { comeIn } from '@/lib/access/invitations';
import { cookiesHere, forgetInBrowser, keepInBrowser } from '@/lib/access/session-cookie';
import { beginSession, type From, signIn, signOut } from '@/lib/access/sign-in';
import { clock } from '@/lib/clock';
import { doorAction } from '@/lib/door/door-action';
import { addressOfVisitor } from '@/lib/door/visitor';
import type { FormState } from '@/shared/forms/form-state';
import { InvitedForm } from '@/shared/forms/people';
import { OwnerForm, SignInForm, SignOutForm } from '@/shared/forms/sign-in';

async function from(): Promise<From> {
  const sent = await headers();
  const header = (name: string) => sent.get(name);
  return { cookie: await cookiesHere(), browser: header('user-agent') ?? '', address: addressOfVisitor(header) };
}

const begin = doorAction({ may: 'open', form: SignInForm }, async ({ to, ...typed }) => {
  const outcome = await signIn(typed, await from(), clock);
  if (!outcome.ok) return outcome;
  await keepInBrowser(outcome.value);
  revalidatePath('/', 'layout');
  redirect(to);
});

/** Sign in, and go on to the page that was asked for. */
export async function signInAction(state: FormState, form: FormData): Promise<FormState> {
  return begin(state, form);
}

const own = doorAction({ may: 'open', form: OwnerForm }, async (typed) => {
  const asked = await from();
  const made = await makeFirstOwner({ ...typed, address: asked.address }, clock);
  if (!made.ok) return made;
  await keepInBrowser(await beginSession({ personId: made.value.personId, how: 'password' }, asked, clock));
  revalidatePath('/', 'layout');
  redirect('/today');
});

/** Make the owner's sign-in, and be signed in. */
export async function makeOwnerAction(state: FormState, form: FormData): Promise<FormState> {
  return own(state, form);
}

const enter = doorAction({ may: 'open', form: InvitedForm }, async (typed) => {
  const come = await comeIn(typed, clock);
  if (!come.ok) return come;
  await keepInBrowser(await beginSession({ personId: come.value.personId, how: 'password' }, await from(), clock));
  revalidatePath('/', 'layout');
  redirect('/');
});

/** Come in by an invitation, and be signed in. */
export async function comeInAction(state: FormState, form: FormData): Promise<FormState> {
  return enter(state, form);
}

const end = doorAction({ may: 'open', form: SignOutForm }, async () => {
  await signOut(await cookiesHere());
  await forgetInBrowser();
  revalidatePath('/', 'layout');
  redirect('/sign-in');
});

/** Sign out in this browser. */
export async function signOutAction(state: FormState, form: FormData): Promise<FormState> {
  return end(state, form);
}
