import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { workingScreen } from '@/lib/views/working';
import { one, type Search } from '../_parts/search';
import { WorkingSheet } from '../_parts/working-sheet';

export const metadata: Metadata = { title: 'How a figure was reached' };

async function WorkingPage({ searchParams }: { searchParams: Promise<Search> }) {
  const screen = await workingScreen(clock, one((await searchParams).figure) ?? '');
  if (!screen) notFound();
  return <WorkingSheet working={screen.working} ways={screen.ways} headingId="working" />;
}

export default doorPage('see-shop', WorkingPage);
