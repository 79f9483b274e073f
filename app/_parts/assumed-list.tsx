import type { Assumed } from '@/lib/engine/buying/assumed';
import { EnterLink } from './to-enter';

/** What nobody entered and a figure takes for granted, shut until somebody asks, each with the way to enter it. */
export function AssumedList({ of }: { of: readonly Assumed[] }) {
  if (of.length === 0) return null;
  return (
    <details>
      <summary>Taken for granted ({of.length})</summary>
      <ul>
        {of.map(({ path, of: what, taken, at }) => (
          <li key={path}>
            <b>{what}</b>: {taken}. {at && <EnterLink at={at} of={`${what}: ${taken}`} />}
          </li>
        ))}
      </ul>
    </details>
  );
}
