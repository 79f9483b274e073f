/** One place of the shop, as the navigation knows it. */
export type Place = { href: string; name: string };

/** The places there are, in their order: Today, Week, Mix, Shelf, Buy, Keep-out, Log, Setup. A place is named once it exists. */
export const PLACES: Place[] = [
  { href: '/today', name: 'Today' },
  { href: '/week', name: 'Week' },
  { href: '/mix', name: 'Mix' },
  { href: '/shelf', name: 'Shelf' },
  { href: '/buy', name: 'Buy' },
  { href: '/keep-out', name: 'Keep-out' },
  { href: '/log', name: 'Log' },
  { href: '/setup', name: 'Setup' },
];
