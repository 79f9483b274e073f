import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { setupScreen } from '@/lib/views/setup';
import { FirstVisit } from '../../_parts/first-visit';
import field from '../../_parts/form-field.module.css';
import { BringList } from './bring-list';
import styles from './csv.module.css';

export const metadata: Metadata = { title: 'Lists in and out' };

const LISTS = [
  ['products', 'Products', 'what they hold, and what their labels say'],
  ['offers', 'Offers', 'who sells which pack, and for how much'],
  ['lots', 'Lots', 'the bottles: what is left, how long it keeps'],
] as const;

async function CsvPage() {
  const { shown } = await setupScreen(clock);
  if (!shown) return <FirstVisit />;
  return (
    <>
      <h1>Lists in and out</h1>
      <p className="soft">
        Products, offers and lots as CSV, which every spreadsheet program opens and saves. They go into and come out of{' '}
        <b>{shown.settings.name}</b>.
      </p>
      <div className={styles.columns}>
        <section aria-labelledby="in">
          <h2 id="in">Bring a list in</h2>
          <BringList shop={{ id: shown.id, name: shown.settings.name }} />
        </section>
        <section aria-labelledby="out" className={styles.out}>
          <h2 id="out">Take a list out</h2>
          <ul>
            {LISTS.map(([list, title, about]) => (
              <li key={list} className={styles.list}>
                <span>
                  <b>{title}</b>
                  <small className="soft">{about}</small>
                </span>
                <span className={styles.links}>
                  <a href={`/api/v1/csv/${list}.csv`} download aria-label={`${title} as CSV`}>
                    As it is
                  </a>
                  <a href={`/api/v1/csv/template.csv?list=${list}`} download aria-label={`Template for ${list}`}>
                    Template
                  </a>
                </span>
              </li>
            ))}
          </ul>
          <p className={field.hint}>
            A template is a header with two lines to write over. What is taken out as it is can be changed and brought
            in again: lines keep their id, and a list without ids makes new ones.
          </p>
        </section>
      </div>
    </>
  );
}

export default doorPage('grow', CsvPage);
