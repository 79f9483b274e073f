import 'server-only';
import { headers } from 'next/headers';
import { forbidden, redirect } from 'next/navigation';
import type { ReactNode } from 'react';
import { letIn } from '../access/let-in';
import type { May } from '../access/may';
import { cookiesHere } from '../access/session-cookie';
import { whoAsksHere } from '../access/who-asks';
import { PATH_HEADER } from './path-header';

/**
 * Every page is made by this: it is shown to whoever may see it in the shop that the device works in.
 *
 * Others are led to sign in and back again, or told that it is not for them (403).
 */
export function doorPage<P>(
  may: May,
  page: (props: P) => ReactNode | Promise<ReactNode>,
): (props: P) => Promise<ReactNode> {
  return async (props) => {
    const asker = await whoAsksHere();
    const notIn = letIn(asker, may, [], await cookiesHere());
    if (notIn?.code === 'not-allowed') forbidden();
    if (notIn?.code === 'no-owner-yet') redirect('/sign-in/owner');
    if (notIn) redirect(`/sign-in?to=${encodeURIComponent((await headers()).get(PATH_HEADER) ?? '/')}`);
    return page(props);
  };
}
