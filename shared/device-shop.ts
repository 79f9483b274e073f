/** The cookie in which a device remembers the shop it works in. */
export const DEVICE_SHOP = 'shown-shop';

/** How long a device remembers it, in seconds: as long as browsers keep a cookie at most, 400 days. */
export const REMEMBERED_SECONDS = 400 * 24 * 60 * 60;

/** The shop a device works in; `ask` where there are several and it was given none of them; `none` where there is no shop. */
export type DeviceShop<S> = S | 'ask' | 'none';

/**
 * The shop that a device works in. It is never guessed: among several shops only the device's own choice counts.
 *
 * Takes    the id that the device remembers, or an empty text; every shop there is
 */
export function deviceShop<S extends { id: string }>(remembered: string, shops: readonly S[]): DeviceShop<S> {
  const chosen = shops.find(({ id }) => id === remembered);
  if (chosen) return chosen;
  const [first, ...others] = shops;
  if (!first) return 'none';
  return others.length > 0 ? 'ask' : first;
}

/**
 * What a device with no choice has to remember: the only shop there is, so that a second one changes nothing for it.
 * Null when there is nothing to remember. An earlier choice is never replaced.
 */
export function toRemember<S extends { id: string }>(remembered: string, shops: readonly S[]): string | null {
  const shop = deviceShop(remembered, shops);
  return remembered === '' && typeof shop === 'object' ? shop.id : null;
}
