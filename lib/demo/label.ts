import type { ShopFile } from '@/shared/shop-file/contract';

type Label = ShopFile['products'][number]['label'];

/** The one use that the demo's labels name. */
export const FOLIAR = 'potted plants, foliar';

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
