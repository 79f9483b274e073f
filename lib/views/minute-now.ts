import { clockOf } from '@/shared/time/zone';
import type { House } from './house';

/** Minutes since midnight on the shop's clock. */
export const minuteNow = ({ shop, now }: House): number => clockOf(shop.zone, now).minuteOfDay;
