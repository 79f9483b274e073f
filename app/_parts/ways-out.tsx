import type { WayOut } from '@/lib/views/ways-out';
import { entryHref } from './entry-href';

/** What to do about a bench whose end is not known, each with the way there. Takes the name of the bench, for those who hear it. */
export function WaysOut({ ways, of }: { ways: readonly WayOut[]; of: string }) {
  return ways.map(({ words, at }) => (
    <span key={`${words} ${wayHref(at)}`}>
      <a href={wayHref(at)}>
        {words}
        <span className="spoken">, {of}</span>
      </a>{' '}
    </span>
  ));
}

const wayHref = (at: WayOut['at']): string => (typeof at === 'string' ? `/mix#${at}` : entryHref(at));
