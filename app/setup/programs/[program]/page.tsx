import type { Metadata } from 'next';
import { UnreadOf, UnreadOrMissing } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { programFormScreen } from '@/lib/views/program-form';
import { ProgramForm } from '../program-form';

export const metadata: Metadata = { title: 'A program' };

type ProgramParams = { params: Promise<{ program: string }> };

async function ProgramPage({ params }: ProgramParams) {
  const screen = await programFormScreen(clock, decodeURIComponent((await params).program));
  const of = { list: 'programs' as const, id: decodeURIComponent((await params).program) };
  if (!screen) return <UnreadOrMissing of={of} />;
  return (
    <>
      <UnreadOf of={of} />
      <p>
        <a href="/setup/programs">Programs</a>
      </p>
      <h1>Change a program</h1>
      <ProgramForm screen={screen} />
    </>
  );
}

export default doorPage('grow', ProgramPage);
