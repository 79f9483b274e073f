import type { Metadata } from 'next';
import { FirstVisit } from '@/app/_parts/first-visit';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { enteredAs } from '@/lib/door/entered-as';
import { mixDoing } from '@/lib/views/mix-doing';
import { DoMix } from './do-mix';

export const metadata: Metadata = { title: 'Mix, step by step' };

type MixAsked = { searchParams: Promise<Record<string, string | string[] | undefined>> };

/** One mix, step by step. Once it is on the screen it needs no network until its record is sent. */
async function DoMixPage({ searchParams }: MixAsked) {
  const pairs = Object.entries(await searchParams).flatMap(([name, values]) =>
    [values ?? []].flat().map((value) => [name, value] as const),
  );
  const doing = await mixDoing(clock, pairs, await enteredAs());
  if (!doing) return <FirstVisit />;
  return doing.ok ? (
    <DoMix plan={doing.value.plan} isDone={doing.value.isDone} told={null} />
  ) : (
    <DoMix plan={null} isDone={false} told={doing.message} />
  );
}

export default doorPage('spray', DoMixPage);
