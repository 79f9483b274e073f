import type { Metadata } from 'next';
import { OpeningsConfirmed } from '@/app/_parts/openings-confirmed';
import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { benchFormScreen } from '@/lib/views/bench-form';
import { BenchForm } from '../bench-form';

export const metadata: Metadata = { title: 'A bench' };

type BenchParams = { params: Promise<{ bench: string }> };

async function BenchPage({ params }: BenchParams) {
  const screen = await benchFormScreen(clock, decodeURIComponent((await params).bench));
  const of = { list: 'benches' as const, id: decodeURIComponent((await params).bench) };
  if (!screen) return <UnreadOrMissing of={of} />;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href="/setup/benches">Benches</a>
      </p>
      <h1>{screen.draft.name}</h1>
      <BenchForm screen={screen} />
      <OpeningsConfirmed openings={screen.openings} />
    </>
  );
}

export default doorPage('grow', BenchPage);
