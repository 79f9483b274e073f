import 'server-only';
import { showInstant } from '@/shared/time/show-day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import { workingLinks } from '../data/shared-links';
import { shopNow } from './house';

/** The links to the board of the sales floor that work now, as Setup shows them. */
export type BoardLinksScreen = {
  shop: string;
  links: { id: string; href: string; madeBy: string; madeAt: string; commandId: string }[];
  /** For a form that is sent without scripts. */
  commandId: string;
};

/** Every link to the board that works. Null when there is no shop. */
export async function boardLinksScreen(clock: Clock): Promise<BoardLinksScreen | null> {
  const here = await shopNow(clock);
  if (!here) return null;
  const links = (await workingLinks(here.id)).filter(({ kind }) => kind === 'board');
  return {
    shop: here.id,
    commandId: newCommandId(),
    links: links.map(({ id, token, actor, madeAt }) => ({
      ...{ id, href: `/board/${token}`, madeBy: actor, commandId: newCommandId() },
      madeAt: showInstant(madeAt, here.ways.zone, here.today),
    })),
  };
}
