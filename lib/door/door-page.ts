import 'server-only';
import type { Metadata } from 'next';
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

/**
 * The title of a page that names something of the shop. It is made apart from the page, so it asks the same of whoever comes:
 * others read the title of a page that is not there.
 *
 * Takes    what makes the title; null where there is no such thing
 */
export function doorTitle<P>(
  may: May,
  title: (props: P) => Promise<string | null | undefined>,
): (props: P) => Promise<Metadata> {
  return async (props) => {
    const notIn = letIn(await whoAsksHere(), may, [], await cookiesHere());
    return { title: (notIn === null && (await title(props))) || 'Not here' };
  };
}
