import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { isCodeAsked } from '@/lib/access/owner-code';
import { whoAsksHere } from '@/lib/access/who-asks';
import { doorPage } from '@/lib/door/door-page';
import styles from '../sign-in.module.css';
import { OwnerForm } from './owner-form';

export const metadata: Metadata = { title: 'The owner’s sign-in' };

/** The first person here makes a sign-in. Once there is one, this page leads to the ordinary one. */
async function OwnerPage() {
  const asker = await whoAsksHere();
  const isUnowned = asker.kind === 'unowned' || (asker.kind === 'stranger' && asker.why === 'no-owner');
  if (!isUnowned) redirect('/sign-in');
  return (
    <div className={styles.narrow}>
      <h1>Make the owner’s sign-in</h1>
      <p>
        From then on nobody sees or changes anything here without signing in. The owner decides who else works here and
        what they may do.
      </p>
      <OwnerForm asksCode={isCodeAsked()} />
    </div>
  );
}

export default doorPage('open', OwnerPage);
