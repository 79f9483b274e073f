import type { ToEnter } from '@/lib/engine/rules/to-enter';
import { EnterLink } from './to-enter';

/** That nobody can say when a product runs out, in a line, with the way to what is missing. */
export function NeedUnknown({ toEnter }: { toEnter: readonly ToEnter[] }) {
  return (
    <p className="grave">
      <b>Not known when it runs out.</b>
      {toEnter.map(({ words, at }) => (
        <span key={words}>
          {' '}
          {words} <EnterLink at={at} of={words} />
        </span>
      ))}
    </p>
  );
}
