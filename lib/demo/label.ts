import type { ShopFile } from '@/shared/shop-file/contract';

type Label = ShopFile['products'][number]['label'];

/** The one use that the demo's labels name. */
export const FOLIAR = 'potted plants, foliar';

/** What the demo's labels say on first aid. The words are the demo's own. */
const EYES = 'In eyes: hold them open and rinse gently with water for 15 minutes; take contact lenses out after 5.';
const SKIN = 'On skin: take off what is soaked and rinse with plenty of water for 15 minutes.';
const ADVICE = 'Then call for advice, with this label at hand.';
export const FIRST_AID = {
  plain: `${EYES} ${SKIN} ${ADVICE}`,
  oil: `Swallowed: call for advice at once, and make nobody vomit. ${EYES} ${SKIN} ${ADVICE}`,
  dust: `Breathed in: go out into fresh air. ${EYES} ${SKIN} ${ADVICE}`,
  acid: `${EYES} Get medical help at once. ${SKIN} Swallowed: rinse the mouth, make nobody vomit, call at once.`,
};

/** A label of which nothing was typed in yet: everything unknown. */
export const UNLABELLED: Label = {
  rates: [],
  reiHours: null,
  phiDays: null,
  maxApplicationsPerYear: null,
  minDaysBetween: null,
  modes: [],
  signalWord: null,
  protectiveEquipment: [],
  sprayPh: null,
  doNotMixWith: [],
  registration: null,
  hotAboveC: null,
  firstAid: null,
  storage: null,
};
