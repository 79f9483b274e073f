import type { Metadata } from 'next';
import { clock } from '@/lib/clock';
import { doorPage } from '@/lib/door/door-page';
import { dropScreen } from '@/lib/views/measuring';
import { showNumber } from '@/shared/measure/show';
import { FirstVisit } from '../../_parts/first-visit';
import { DropForm } from '../measuring/drop-form';
import styles from '../measuring/measuring.module.css';

export const metadata: Metadata = { title: 'Measure a drop' };

async function MeasureDropPage() {
  const screen = await dropScreen(clock);
  if (!screen) return <FirstVisit />;
  return (
    <>
      <p>
        <a href="/shelf">Shelf</a>
      </p>
      <h1>Measure a drop</h1>
      <p className="soft">A drop of the shop’s dropper counts as {showNumber(screen.dropMl)} mL.</p>
      <ol className={styles.steps}>
        <li>Hold the dropper upright, filled with water.</li>
        <li>Count drops into a small syringe or cylinder, or onto a scale: a gram of water is a millilitre.</li>
        <li>Write what they come to, and do it at least three times.</li>
      </ol>
      <DropForm {...screen} />
    </>
  );
}

export default doorPage('spray', MeasureDropPage);
