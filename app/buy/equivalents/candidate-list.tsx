import type { CandidateSeen, EquivalentsScreen } from '@/lib/views/equivalents';
import type { Fig } from '@/lib/views/figures';
import { Figure } from '../../_parts/figure';
import { FlagLines } from '../../_parts/flag-lines';
import styles from './equivalents.module.css';
import { SwitchForm } from './switch-form';

/** Every candidate: its equal dose, three bases side by side, what else it brings, whether it is allowed, and the switch. */
export function CandidateList({ screen }: { screen: EquivalentsScreen }) {
  return (
    <ul className={styles.candidates} aria-label="What could stand there">
      {screen.candidates.map((candidate) => (
        <li key={candidate.id} aria-label={candidate.name}>
          <h2>
            <a href={`/shelf/${encodeURIComponent(candidate.id)}`}>{candidate.name}</a>
            <small className={candidate.allowed ? 'soft' : 'grave'}>{standingWords(candidate)}</small>
          </h2>
          <Bases of={candidate} screen={screen} />
          {candidate.reasons.map((reason) => (
            <p key={reason} className="grave">
              {reason}
            </p>
          ))}
          {candidate.packs.length > 0 && <p>A season: {candidate.packs.join('; ')}.</p>}
          {candidate.isRough && <p className="soft">There was no time to look for cheaper packs for it.</p>}
          {candidate.alsoBrings.length > 0 && <p>It also brings {candidate.alsoBrings.join(', ')}.</p>}
          <Change of={candidate} screen={screen} />
        </li>
      ))}
    </ul>
  );
}

function standingWords({ isNow, isBest, allowed }: CandidateSeen): string {
  const now = isNow ? 'stands there now' : '';
  if (!allowed) return [now, 'not allowed'].filter(Boolean).join(', ');
  return [now, isBest ? 'cheapest over a season' : 'allowed'].filter(Boolean).join(', ');
}

type OfProps = { of: CandidateSeen; screen: EquivalentsScreen };

function Bases({ of, screen: { ways, substance } }: OfProps) {
  const figures: [name: string, figure: Fig][] = [
    ['Equal dose', of.dose],
    [`A gram of ${substance}`, of.perGram],
    ['A litre of spray', of.perLitre],
    ['A season', of.season],
    ['of it wasted', of.waste],
  ];
  return (
    <dl className={styles.bases}>
      {figures.map(([name, figure]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <Figure of={figure} ways={ways} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** What the switch would do, and the one step that does it. */
function Change({ of: { name, change }, screen }: OfProps) {
  if (!change) return null;
  return (
    <div className={styles.change}>
      <p>
        If {screen.recipe.name} took {change.to.dose} of it:
      </p>
      <ul>
        {change.effects.map(({ before, figure, after }) => (
          <li key={`${before}${after}`}>
            {before}
            {figure && <Figure of={figure} ways={screen.ways} />}
            {after}
          </li>
        ))}
      </ul>
      {change.flags.length === 0 ? <p>Nothing new would be flagged.</p> : <FlagLines flags={change.flags} />}
      <SwitchForm of={screen} to={change.to} commandId={change.commandId}>
        Switch to {name}
      </SwitchForm>
    </div>
  );
}
