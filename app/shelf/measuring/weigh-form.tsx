'use client';

import type { WeighScreen } from '@/lib/views/measuring';
import { ThingForm } from '../../_parts/thing-form';
import { useThingForm } from '../../_parts/use-thing-form';
import { keepSpoonAction } from '../measuring-actions';
import { blankReadings, type Measured, Readings, Result, resultOf } from './readings';

const SPOON: Measured = {
  piece: 'Spoon',
  unit: 'g',
  each: 'that portion alone: set to zero before it',
  total: 'all so far: never set to zero',
  piecesHint: 'With a coarse scale, put several on at once.',
};

/** Level teaspoons of a powder on a scale, to what one of them weighs. */
export function WeighForm({ thing }: Pick<WeighScreen, 'thing'>) {
  const form = useThingForm<Record<string, string>>({
    what: 'weigh',
    thing,
    action: keepSpoonAction,
    initial: blankReadings('1'),
    inFields: ({ commandId, shop, id, standing, ...read }) => read,
  });
  return (
    <ThingForm form={form} save="Keep this weight" back={`/shelf/${encodeURIComponent(thing.id)}`}>
      <Readings form={form} measured={SPOON} />
      <Result result={resultOf(form.draft)} measured={SPOON} />
    </ThingForm>
  );
}
