import type { May } from '@/lib/access/may';

/** One place of the shop, as the navigation knows it. */
export type Place = { href: string; name: string };

/** The places there are, in their order, each with what it takes to see it. A place is named once it exists. */
const PLACES: (Place & { may: May })[] = [
  { href: '/today', name: 'Today', may: 'see-shop' },
  { href: '/week', name: 'Week', may: 'see-shop' },
  { href: '/mix', name: 'Mix', may: 'see-shop' },
  { href: '/shelf', name: 'Shelf', may: 'see-shop' },
  { href: '/buy', name: 'Buy', may: 'grow' },
  { href: '/keep-out', name: 'Keep-out', may: 'see-board' },
  { href: '/log', name: 'Log', may: 'see-records' },
  { href: '/setup', name: 'Setup', may: 'grow' },
];

/** The places that somebody may see. Takes what they may. */
export const placesFor = (can: (may: May) => boolean): Place[] =>
  PLACES.filter(({ may }) => can(may)).map(({ href, name }) => ({ href, name }));
