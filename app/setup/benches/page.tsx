import type { Metadata } from 'next';
import { UnreadOf } from '@/app/_parts/unread-of';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { type BenchListed, benchesScreen } from '@/lib/views/bench-form';
import { EmptyPlace } from '../../_parts/empty-place';
import { FirstVisit } from '../../_parts/first-visit';
import styles from '../setup-list.module.css';

export const metadata: Metadata = { title: 'Benches' };

async function BenchesPage() {
  const benches = await benchesScreen(clock);
  if (!benches) return <FirstVisit />;
  return (
    <>
      <UnreadOf of={{ list: 'benches' }} />
      <p>
        <a href="/setup">Setup</a>
      </p>
      <h1>Benches</h1>
      {benches.length === 0 && (
        <EmptyPlace>A bench is a group of plants that are sprayed together. There is none yet.</EmptyPlace>
      )}
      <ul className={styles.list}>
        {benches.map((bench) => (
          <li key={bench.id}>
            <a href={`/setup/benches/${encodeURIComponent(bench.id)}`}>{bench.name}</a>
            <span>{plantsText(bench)}</span>
            <span className="soft">{placeText(bench)}</span>
          </li>
        ))}
      </ul>
      <p className="apart">
        <a className="button" data-main="" href="/setup/benches/new">
          Add a bench
        </a>
      </p>
    </>
  );
}

function plantsText({ plants, groups, unmeasured }: BenchListed): string {
  if (groups === 0) return 'nothing stands there';
  const text = `${plants} plants in ${groups === 1 ? 'one group' : `${groups} groups`}`;
  if (unmeasured === 0) return text;
  return `${text}, mL per plant not known of ${unmeasured === groups ? 'any' : unmeasured}`;
}

function placeText({ customers, enclosed, area }: BenchListed): string {
  const words = [customers ? 'customers walk there' : 'customers do not get there', enclosed ? 'enclosed' : 'open air'];
  return [...words, area ?? 'area not known'].join(', ');
}

export default doorPage('grow', BenchesPage);
