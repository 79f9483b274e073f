import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { whoAsksHere } from '@/lib/access/who-asks';
import { doorPage } from '@/lib/door/door-page';
import { one, type Search } from '../_parts/search';
import styles from './sign-in.module.css';
import { SignInForm } from './sign-in-form';
import { SignOutButton } from './sign-out-button';

export const metadata: Metadata = { title: 'Sign in' };

async function SignInPage({ searchParams }: { searchParams: Promise<Search> }) {
  const asker = await whoAsksHere();
  if (asker.kind === 'unowned' || (asker.kind === 'stranger' && asker.why === 'no-owner')) redirect('/sign-in/owner');
  const { to } = await searchParams;
  return (
    <div className={styles.narrow}>
      <h1>Sign in</h1>
      {asker.kind === 'person' && (
        <>
          <p>
            {asker.person.name} is signed in here. <a href="/">Go on</a>, or sign in as somebody else.
          </p>
          <SignOutButton />
        </>
      )}
      {asker.kind === 'stranger' && asker.why === 'unknown' && (
        <p role="alert">The database cannot be read now, so nobody can sign in. Keep out of every bench meanwhile.</p>
      )}
      <SignInForm to={one(to) ?? '/'} />
    </div>
  );
}

export default doorPage('open', SignInPage);
