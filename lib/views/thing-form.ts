import 'server-only';
import { fingerprint, fingerprintOf } from '../data/fingerprint';
import { newCommandId } from '../data/new-id';

/** What every form about one thing of the shop carries, so that nothing is written twice or over somebody else's change. */
export type ThingOpened = { commandId: string; shop: string; id: string; standing: string };

/** A thing as it stands while a form is opened for it. Null: it is to be new. */
export const openedThing = (shop: string, thing: { id: string } | null): ThingOpened => ({
  commandId: newCommandId(),
  shop,
  id: thing?.id ?? '',
  standing: thing ? fingerprint(thing) : '',
});

/** What a form about the shop itself asks of it, as it stands. */
export const openedSettings = (shop: string, settings: object, part: object): ThingOpened => ({
  ...openedThing(shop, null),
  id: 'shop',
  standing: fingerprintOf(settings, Object.keys(part)),
});
