import type { Metadata } from 'next';
import { whoAsksHere } from '@/lib/access/who-asks';
import { SignOutButton } from './sign-in/sign-out-button';

export const metadata: Metadata = { title: 'Not for this sign-in' };

/** What somebody sees who is signed in and may not see a page. */
export default async function Forbidden() {
  const asker = await whoAsksHere();
  return (
    <>
      <h1>This page is not for your sign-in</h1>
      <p>
        {asker.kind === 'person' && `${asker.person.name} is signed in here. `}
        Ask the owner if you need it. <a href="/">Go to what is open to you</a>
      </p>
      <SignOutButton />
    </>
  );
}
