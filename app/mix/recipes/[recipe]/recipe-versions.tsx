import type { RecipeScreen, VersionShown } from '@/lib/views/recipe';
import { showDayShort, showInstant } from '@/shared/time/show-day';
import { dayOf } from '@/shared/time/zone';
import type { Ways } from '../../../_parts/shown-text';
import styles from './recipe.module.css';

/** How the recipe became what it is: who changed what and when, and what was sprayed by each version. */
export function RecipeVersions({ screen: { versions, ways } }: { screen: RecipeScreen }) {
  return (
    <section aria-labelledby="versions">
      <h2 id="versions">Versions</h2>
      <ol className={styles.order}>
        {versions.map((version) => (
          <li key={version.number}>
            <b>Version {version.number}</b>
            <span className="soft">
              , {showInstant(version.savedAt, ways.zone, ways.today)}, {version.actor}
            </span>
            <p>{changesText(version)}</p>
            <p className="soft small">{sprayedText(version, ways)}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}

function changesText({ changes }: VersionShown): string {
  if (changes === null) return 'As it was first entered.';
  return changes.length === 0 ? 'Says the same as the one before.' : `${changes.join('. ')}.`;
}

const MOST_NAMED = 4;

/** A record keeps the version that it was sprayed by. */
function sprayedText({ applications }: VersionShown, { zone, today }: Ways): string {
  if (applications.length === 0) return 'Nothing was sprayed by this version.';
  const days = applications.slice(0, MOST_NAMED).map(({ startedAt }) => showDayShort(dayOf(zone, startedAt), today));
  const more = applications.length - days.length;
  const times = applications.length === 1 ? 'once' : `${applications.length} times`;
  return `Sprayed ${times}: ${days.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`;
}
