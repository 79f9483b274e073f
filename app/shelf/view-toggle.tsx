'use client';

import { useRouter } from 'next/navigation';
import { useOneKey } from '../_parts/use-one-key';

type ViewToggleProps = { isTable: boolean; href: string };

/** From the bottles to the plain table and back: a link for everybody, and the key T for who has a keyboard. */
export function ViewToggle({ isTable, href }: ViewToggleProps) {
  const router = useRouter();
  useOneKey('t', () => router.replace(href, { scroll: false }));
  return (
    <a
      className="button"
      href={href}
      aria-keyshortcuts="t"
      title={`${isTable ? 'Show bottles' : 'Show a table'} (key T)`}
    >
      {isTable ? 'As bottles' : 'As a table'} <kbd>T</kbd>
    </a>
  );
}
