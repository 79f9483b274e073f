import type { Metadata } from 'next';
import { UnreadOf } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { programsScreen } from '@/lib/views/program-form';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import styles from '../setup-list.module.css';
import { NextDays } from './next-days';

export const metadata: Metadata = { title: 'Programs' };

async function ProgramsPage() {
  const screen = await programsScreen(clock);
  if (!screen) return <FirstVisit />;
  const { programs, today, zone } = screen;
  return (
    <>
      <UnreadOf of={{ list: 'programs' }} />
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>Programs</h1>
      {programs.length === 0 && (
        <EmptyPlace>
          A program says which recipes are sprayed on which benches, and how often. There is none yet.
        </EmptyPlace>
      )}
      <ul className={styles.list}>
        {programs.map(({ id, recipes, benches, draft }) => (
          <li key={id}>
            <a href={`/setup/programs/${encodeURIComponent(id)}`}>{recipes.join(', then ')}</a>
            <span>
              on {benches.join(', ')} at {draft.startTime}
            </span>
            <NextDays typed={draft} recipes={recipes} today={today} zone={zone} most={3} />
          </li>
        ))}
      </ul>
      <p className="apart">
        <a className="button" data-main="" href="/setup/programs/new">
          Start a program
        </a>
      </p>
    </>
  );
}

export default doorPage('grow', ProgramsPage);
