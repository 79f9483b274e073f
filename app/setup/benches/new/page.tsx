import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { benchFormScreen } from '@/lib/views/bench-form';
import { FirstVisit } from '../../../_parts/first-visit';
import { BenchForm } from '../bench-form';

export const metadata: Metadata = { title: 'A new bench' };

async function NewBenchPage() {
  const screen = await benchFormScreen(clock, null);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/setup/benches">Benches</a>
      </p>
      <h1>A new bench</h1>
      <BenchForm screen={screen} />
    </>
  );
}

export default doorPage('grow', NewBenchPage);
