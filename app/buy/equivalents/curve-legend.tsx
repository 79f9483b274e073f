import type { SeasonCurve } from '@/lib/views/season-curve';
import styles from './equivalents.module.css';

/** A dash of its own for each line, so that none is told by its colour alone. */
export const DASHES = ['', '7 4', '2 3', '10 3 2 3'];

/** Which line is which, in words beside the same dashes. */
export function CurveLegend({ names }: Pick<SeasonCurve, 'names'>) {
  return (
    <ul className={styles.legend} aria-hidden="true">
      {names.map((name, at) => (
        <li key={name}>
          <svg width="42" height="14" aria-hidden="true" focusable="false">
            <line
              x1="0"
              y1="7"
              x2="42"
              y2="7"
              stroke="var(--ink)"
              strokeWidth="2"
              strokeDasharray={DASHES[at % DASHES.length]}
            />
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
