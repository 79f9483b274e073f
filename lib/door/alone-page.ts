import 'server-only';
import { headers } from 'next/headers';
import { ALONE_HEADER } from './alone';

/** Whether the page that is being made stands by itself, without the places of the shop around it. */
export async function standsAlone(): Promise<boolean> {
  return (await headers()).has(ALONE_HEADER);
}
