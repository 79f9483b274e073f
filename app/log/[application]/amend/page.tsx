import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { doorPage } from '@/lib/door/door-page';
import { amendScreen } from '@/lib/views/amend-form';
import { AmendForm } from './amend-form';

export const metadata: Metadata = { title: 'Amend a record' };

async function AmendPage({ params }: { params: Promise<{ application: string }> }) {
  const screen = await amendScreen(decodeURIComponent((await params).application));
  if (!screen) notFound();
  return (
    <>
      <p>
        <a href={`/log/${encodeURIComponent(screen.about.application)}`}>Back to the record</a>
      </p>
      <h1>Amend {screen.title}</h1>
      <p className="soft">
        Nothing is written over: this makes a further version, with your name, the time and the reason. What opens a
        bench earlier counts once it is confirmed.
      </p>
      <AmendForm screen={screen} />
    </>
  );
}

export default doorPage('grow', AmendPage);
