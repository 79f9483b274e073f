import type { PlannedMix } from '@/lib/views/mix';
import { showDayShort } from '@/shared/time/show-day';
import { Figure } from '../_parts/figure';
import { SeverityMark } from '../_parts/flag-lines';
import type { Ways } from '../_parts/shown-text';
import styles from './mix.module.css';

type ListProps = {
  planned: PlannedMix[];
  ways: Ways;
};

/** Planned sprayings, each with how much it is, what it costs, what is flagged, and the two ways to go on. */
export function PlannedMixes({ planned, ways }: ListProps) {
  return (
    <ul className={styles.planned}>
      {planned.map((mix) => (
        <li key={mix.query}>
          <Day mix={mix} ways={ways} />
          <div className={styles.what}>
            <a className={styles.recipe} href={`/mix/recipes/${encodeURIComponent(mix.recipe.id)}`}>
              {mix.recipe.name}
            </a>
            <span className="soft">{mix.benches.join(', ')}</span>
          </div>
          <Amounts mix={mix} ways={ways} />
          <Flagged mix={mix} />
          <p className={styles.ways}>
            <a className="button" href={`/mix/sheet?${mix.query}`}>
              Sheet<span className="spoken"> for {mix.recipe.name}</span>
            </a>
            <a className="button" data-main="" href={`/mix/do?${mix.query}`}>
              Mix it now<span className="spoken">: {mix.recipe.name}</span>
            </a>
          </p>
        </li>
      ))}
    </ul>
  );
}

type MixProps = { mix: PlannedMix; ways: Ways };

function Day({ mix: { date }, ways }: MixProps) {
  return <span className={styles.day}>{date === ways.today ? 'Today' : showDayShort(date, ways.today)}</span>;
}

function Amounts({ mix: { amounts }, ways }: MixProps) {
  if (!amounts) return <span className="grave">not known: enter the mL per plant</span>;
  return (
    <span className={styles.amounts}>
      <span>
        <Figure of={amounts.sprayMl} ways={ways} /> in <Figure of={amounts.fills} ways={ways} />
      </span>
      <Figure of={amounts.cost} ways={ways} />
    </span>
  );
}

function Flagged({ mix: { flags, stops } }: { mix: PlannedMix }) {
  if (flags === 0) return <span className={styles.flagged}>nothing flagged</span>;
  return (
    <span className={styles.flagged}>
      <SeverityMark severity={stops > 0 ? 'stop' : 'warn'} />
      {stops > 0 && <b className="grave">{stops} stop </b>}
      {stops > 0 ? `of ${flags} flagged` : `${flags} flagged`}
    </span>
  );
}
