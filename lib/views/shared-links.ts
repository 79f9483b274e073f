import 'server-only';
import type { LinkKind } from '@/shared/forms/shared-link';
import { showInstant } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import { workingLinks } from '../data/shared-links';
import { shopNow } from './house';

/** The secret links of one kind that work now, as Setup shows them. */
export type LinksScreen = {
  shop: string;
  kind: LinkKind;
  /** `href` is a path on this server. */
  links: { id: string; href: string; madeBy: string; madeAt: string; commandId: string }[];
  /** For a form that is sent without scripts. */
  commandId: string;
};

/** Every link of a kind that works. Null when there is no shop. */
export async function linksScreen(kind: LinkKind, clock: Clock): Promise<LinksScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const links = (await workingLinks(here.id)).filter((link) => link.kind === kind);
  return {
    ...{ shop: here.id, kind, commandId: newCommandId() },
    links: links.map(({ id, token, actor, madeAt }) => ({
      ...{ id, href: ADDRESS[kind](token), madeBy: actor, commandId: newCommandId() },
      madeAt: showInstant(madeAt, here.ways.zone, here.today),
    })),
  };
}

const ADDRESS: Record<LinkKind, (token: string) => string> = {
  board: (token) => `/board/${token}`,
  calendar: (token) => `/api/v1/calendar.ics?link=${token}`,
};
