import { type Exact, toNumber } from '@/shared/quantity/exact';
import type { AskedMix } from '../mix/asked-mix';
import { figureAddress, type Shown } from './shown';

/** The address of a figure of a mix. */
export const mixAddress = ({ query }: Pick<AskedMix, 'query'>, ...path: (string | number)[]): string =>
  figureAddress('mix', query, ...path);

/** A volume in mL as a shown value. */
export const volume = (ml: Exact): Shown => ({ kind: 'volume', ml: toNumber(ml) });
