import type { FoundGroup } from '@/shared/api/search';
import styles from './found-groups.module.css';

const TITLES: Record<FoundGroup['of'], string> = {
  product: 'Products',
  bottle: 'Bottles',
  bench: 'Benches',
  recipe: 'Recipes',
};

type FoundGroupsProps = {
  groups: FoundGroup[] /** Where the rest of a long group is; left out on that page itself. */;
  allAt?: string;
};

/** What a search found, by what it is: plain lists of links under their headings. */
export function FoundGroups({ groups, allAt }: FoundGroupsProps) {
  return groups.map(({ of, found, more }) => (
    <section key={of} className={styles.group} aria-labelledby={`found-${of}`}>
      <h2 id={`found-${of}`}>{TITLES[of]}</h2>
      <ul>
        {found.map(({ href, name, detail }) => (
          <li key={`${href} ${detail}`}>
            <a className={styles.found} href={href} data-found="">
              <b>{name}</b> <span>{detail}</span>
            </a>
          </li>
        ))}
      </ul>
      {more > 0 && (
        <p className={styles.more}>
          {allAt ? <a href={allAt}>and {more} more</a> : `and ${more} more: say more of it`}
        </p>
      )}
    </section>
  ));
}

/** How much was found, for whoever does not see it. */
export function foundWords(groups: FoundGroup[]): string {
  const count = groups.reduce((sum, { found, more }) => sum + found.length + more, 0);
  const best = groups[0]?.found[0];
  if (!best) return 'Nothing is called that, carries that code or has that in it.';
  return `${count} found. Enter opens ${best.name}.`;
}
