import type { Missed } from '@/lib/views/missed-turn';
import { showDayShort } from '@/shared/time/show-day';
import { DoneIt } from './done-it';
import styles from './mix.module.css';
import { SkipIt } from './skip-it';

/** What was missed, each with what may have become of it: mixed now, done as planned, moved, or left out. */
export function MissedList({ missed }: { missed: Missed[] }) {
  return (
    <ul className={styles.planned}>
      {missed.map(({ key, shop, commandId, program, on, date, recipe, benches, query }) => (
        <li key={key}>
          <span>
            <b className="grave">Missed</b> {showDayShort(date)}
          </span>
          <div className={styles.what}>
            <b>{recipe}</b>
            <span className="soft">{benches}</span>
          </div>
          <p className={styles.ways}>
            <a className="button" href={`/week?from=${date}`}>
              Move<span className="spoken"> {recipe}</span>
            </a>
            <a className="button" data-main="" href={`/mix/do?${query}`}>
              Mix it now<span className="spoken">: {recipe}</span>
            </a>
          </p>
          <DoneIt {...{ shop, program, on }} commandId={`${commandId}-done`} />
          <SkipIt {...{ shop, program, on }} commandId={`${commandId}-skip`} />
        </li>
      ))}
    </ul>
  );
}
