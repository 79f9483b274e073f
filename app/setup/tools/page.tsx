import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { toolsFormScreen } from '@/lib/views/settings-form';
import { FirstVisit } from '../../_parts/first-visit';
import { ToolsForm } from './tools-form';

export const metadata: Metadata = { title: 'Tools' };

async function ToolsPage() {
  const screen = await toolsFormScreen(clock);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>Tools</h1>
      <p className="soft">What is sprayed and measured with. The first sprayer is meant wherever no other is chosen.</p>
      <ToolsForm screen={screen} />
    </>
  );
}

export default doorPage('own', ToolsPage);
