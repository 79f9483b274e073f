import type { Metadata } from 'next';
import { headers } from 'next/headers';
import { notFound } from 'next/navigation';
import { invited } from '@/lib/access/invitations';
import { clock } from '@/lib/clock';
import { publicOrigin } from '@/lib/door/allowed-hosts';
import { doorPage } from '@/lib/door/door-page';
import { squareCode } from '@/lib/views/square-code';
import { ROLE_WORDS } from '@/shared/access/roles';
import { CopyButton } from '../../../_parts/copy-button';
import { one, type Search } from '../../../_parts/search';
import { Square } from '../../../_parts/square';
import styles from '../../board/sheet/sheet.module.css';

export const metadata: Metadata = { title: 'An invitation' };

/** The link of an invitation, as text and as a square code. It is kept nowhere, so it is shown here and not again. */
async function ShowInvitationPage({ searchParams }: { searchParams: Promise<Search> }) {
  const code = one((await searchParams).code) ?? '';
  const its = await invited(code, clock);
  if (!its) notFound();
  const address = `${publicOrigin((await headers()).get('host') ?? '')}/sign-in/invited?code=${code}`;
  return (
    <>
      <p>
        <a href="/setup/people">Who works here</a>
      </p>
      <h1>{its.isKnown ? `A new password for ${its.name}` : `${its.name} is invited`}</h1>
      <p>
        {its.role !== null && `${ROLE_WORDS[its.role].name} in ${its.shop}. `}
        Have {its.name} scan this with the phone, or send the link. It works once, until tomorrow at this time, and is
        not shown again. Whoever has it comes in with it, so show it to nobody else.
      </p>
      <div className={styles.code}>
        <Square of={squareCode(address)} />
      </div>
      <p className={styles.address}>
        <code>{address}</code>
      </p>
      <CopyButton text={address} of={`the link of ${its.name}`} />
    </>
  );
}

export default doorPage('own', ShowInvitationPage);
