import type { ToEnter } from '@/lib/engine/rules/to-enter';
import { entryHref } from './entry-href';

/** What is missing, one line each with the way to enter it. */
export function ToEnterList({ of }: { of: readonly ToEnter[] }) {
  if (of.length === 0) return null;
  return (
    <ul>
      {of.map(({ words, at }) => (
        <li key={words}>
          {words} <EnterLink at={at} of={words} />
        </li>
      ))}
    </ul>
  );
}

/** The way to the field where something is entered; several on a page are told apart by what they are for. */
export function EnterLink({ at, of }: { at: ToEnter['at']; of: string }) {
  return (
    <a href={entryHref(at)} aria-label={`${wordFor(at)}: ${of}`}>
      {wordFor(at)}
    </a>
  );
}

const wordFor = (at: ToEnter['at']): string =>
  at.of === 'product' && at.field === 'gramsPerTeaspoon' ? 'Weigh it' : 'Enter it';
