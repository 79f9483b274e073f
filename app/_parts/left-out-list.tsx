import type { LeftOutSeen } from '@/lib/views/left-out';

/** What was planned and left out, each with its day and its reason. */
export function LeftOutList({ leftOut }: { leftOut: LeftOutSeen[] }) {
  if (leftOut.length === 0) return null;
  return (
    <section aria-labelledby="left-out">
      <h2 id="left-out">Left out</h2>
      <ul>
        {leftOut.map(({ key, when, recipe, benches, reason }) => (
          <li key={key}>
            {when}: <b>{recipe}</b> on {benches}, skipped: {reason}
          </li>
        ))}
      </ul>
    </section>
  );
}
