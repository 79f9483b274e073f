import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { programFormScreen } from '@/lib/views/program-form';
import { FirstVisit } from '../../../_parts/first-visit';
import { ProgramForm } from '../program-form';

export const metadata: Metadata = { title: 'A new program' };

async function NewProgramPage() {
  const screen = await programFormScreen(clock, null);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/setup/programs">Programs</a>
      </p>
      <h1>A new program</h1>
      <ProgramForm screen={screen} />
    </>
  );
}

export default doorPage('grow', NewProgramPage);
