import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { mixFormScreen, mixScreen } from '@/lib/views/mix-screen';
import { FirstVisit } from '../../_parts/first-visit';
import { pairsOf, type Search } from '../../_parts/search';
import { MixChoice } from '../mix-choice';
import { Sheet } from './sheet';
import styles from './sheet.module.css';

export const metadata: Metadata = { title: 'Mix sheet' };

async function MixSheetPage({ searchParams }: { searchParams: Promise<Search> }) {
  const pairs = pairsOf(await searchParams);
  const [screen, form] = [await mixScreen(clock, pairs), await mixFormScreen(clock, pairs)];
  if (!screen || !form) return <FirstVisit />;
  if (!screen.ok) {
    return (
      <>
        <h1>Mix sheet</h1>
        <p role="alert" className={styles.refused}>
          {screen.message}
        </p>
        <MixChoice form={form} button="Show the sheet" />
      </>
    );
  }
  // A form sends more than counts. The address that stays is the short one, which the other pages take too.
  if (pairs.some(([name]) => name === 'by')) redirect(`/mix/sheet?${screen.value.query}`);
  return (
    <Sheet screen={screen.value}>
      <MixChoice form={form} button="Show that" />
    </Sheet>
  );
}

export default doorPage('see-shop', MixSheetPage);
