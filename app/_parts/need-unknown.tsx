import type { ToEnter } from '@/lib/engine/rules/to-enter';
import { EnterLink } from './to-enter';

/** Says that nobody knows when a product runs out, and leads to what is missing. `isShort` leaves the sentence to the link. */
export function NeedUnknown({ toEnter, isShort = false }: { toEnter: readonly ToEnter[]; isShort?: boolean }) {
  return (
    <p className="grave">
      <b>Not known when it runs out.</b>
      {toEnter.map(({ words, at }) => (
        <span key={words}>
          {' '}
          {!isShort && `${words} `}
          <EnterLink at={at} of={words} />
        </span>
      ))}
    </p>
  );
}
