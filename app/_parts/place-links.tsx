'use client';

import Link, { useLinkStatus } from 'next/link';
import { usePathname } from 'next/navigation';
import styles from './place-links.module.css';
import type { Place } from './places';

/** The navigation: every place, the one you are in marked by a bar under it and by `aria-current`. */
export function PlaceLinks({ places }: { places: Place[] }) {
  const path = usePathname();
  return (
    <nav className={styles.places} aria-label="Places">
      {places.map(({ href, name }) => (
        <Link
          key={href}
          href={href}
          prefetch={false}
          className={styles.place}
          aria-current={path === href || path.startsWith(`${href}/`) ? 'page' : undefined}
        >
          {name}
          <Coming />
        </Link>
      ))}
    </nav>
  );
}

/**
 * Shows that a tap was heard while the place is being read. (A loading.tsx would show a page in between, but then
 * every page would need scripts to appear at all.)
 */
function Coming() {
  const { pending } = useLinkStatus();
  return <span className={styles.coming} data-pending={pending || undefined} aria-hidden="true" />;
}
