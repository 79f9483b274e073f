import { type Instant, instantOf, isInstant } from './instant';

/** The clock of a device, which anybody can set, and its count of milliseconds, which nobody can. */
export type DeviceReading = { wall: number; steady: number };

/** The moment by the shop's clock that belongs to a reading of the device. */
export type Contact = DeviceReading & { shop: Instant };

/**
 * What the shop's clock shows now, as far as a device can tell.
 *
 *   shop's time at the last contact + what has passed on the device since, up to the millisecond
 *
 * The count of a device that sleeps stands still, and its clock may be set, so what has passed is the longer of the two: an
 * interval that counts from a later moment never ends too soon.
 *
 * Takes   the last contact; null: there was none, and the device's own clock is all there is
 */
export function shopTime(contact: Contact | null, { wall, steady }: DeviceReading): Instant {
  if (contact === null) return instantOf(Math.ceil(wall));
  const passed = Math.max(0, steady - contact.steady, wall - contact.wall);
  return instantOf(Math.ceil(contact.shop + passed));
}

/** By how many milliseconds the clock of a device was ahead of the shop's at a contact; negative where it was behind. */
export const aheadAt = ({ wall, shop }: Contact): number => wall - shop;

/**
 * A contact made up from how far a device's clock was ahead of the shop's when it last heard from it.
 *
 * Gives   null where that is no number, or leads to no moment
 * Rounds  up to the millisecond: a later moment opens no bench too soon
 */
export function contactAhead(ahead: number, { wall, steady }: DeviceReading): Contact | null {
  const shop = Math.ceil(wall - ahead);
  return isInstant(shop) ? { shop, wall, steady } : null;
}

const MINUTE = 60_000;

/** Whether two clocks differ by so much that people should be told. */
export const isApart = (ahead: number): boolean => Math.abs(ahead) > MINUTE;

/** Whether the clock of a device was set between two moments, going by how far it was ahead of the shop's. */
export const wasSet = (before: number | null, after: number | null): boolean =>
  before !== null && after !== null && isApart(after - before);
