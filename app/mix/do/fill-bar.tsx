import type { Screen } from '@/shared/mix/mix-screens';
import styles from './do.module.css';

/** How far it is: one stroke for each screen, of the fill that is being mixed or of the whole. */
export function FillBar({ screens, at }: { screens: readonly Screen[]; at: Screen }) {
  const its = screens.filter((one) =>
    'fill' in at ? 'fill' in one && one.fill === at.fill : !('fill' in one) || one.fill === 0,
  );
  const here = its.findIndex(({ key }) => key === at.key);
  return (
    <div className={styles.bar} aria-hidden="true">
      {its.map(({ key }, number) => (
        <i key={key} data-part={number < here ? 'done' : number === here ? 'now' : undefined} />
      ))}
    </div>
  );
}
