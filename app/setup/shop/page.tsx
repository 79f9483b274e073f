import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { settingsFormScreen } from '@/lib/views/settings-form';
import { FirstVisit } from '../../_parts/first-visit';
import { SettingsForm } from './settings-form';

export const metadata: Metadata = { title: 'The shop itself' };

async function ShopSettingsPage() {
  const screen = await settingsFormScreen(clock);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>The shop itself</h1>
      <SettingsForm screen={screen} />
    </>
  );
}

export default doorPage('own', ShopSettingsPage);
