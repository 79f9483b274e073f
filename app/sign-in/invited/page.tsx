import type { Metadata } from 'next';
import { invited } from '@/lib/access/invitations';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { ROLE_WORDS } from '@/shared/access/roles';
import { one, type Search } from '../../_parts/search';
import styles from '../sign-in.module.css';
import { InvitedForm } from './invited-form';

export const metadata: Metadata = { title: 'You are invited' };

/** Whoever has the link of an invitation chooses name and password, and is signed in. */
async function InvitedPage({ searchParams }: { searchParams: Promise<Search> }) {
  const code = one((await searchParams).code) ?? '';
  const its = await invited(code, clock);
  return (
    <div className={styles.narrow}>
      {its === null ? (
        <>
          <h1>This invitation does not hold any more</h1>
          <p>It was used, taken back, or is older than a day. Ask the owner for a new one.</p>
          <p>
            <a href="/sign-in">Sign in</a>
          </p>
        </>
      ) : (
        <>
          <h1>{its.isKnown ? 'A new password' : `Welcome to ${its.shop}`}</h1>
          {its.role !== null && (
            <p>
              {ROLE_WORDS[its.role].name}: {ROLE_WORDS[its.role].may}.
            </p>
          )}
          {its.isKnown && <p>For {its.name}. Every other device is signed out with it.</p>}
          <InvitedForm code={code} name={its.name} isKnown={its.isKnown} />
        </>
      )}
    </div>
  );
}

export default doorPage('open', InvitedPage);
