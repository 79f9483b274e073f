import type { SheetProps } from './sheet';
import styles from './sheet.module.css';

/** What is known to go wrong in a tank, and how to try in a jar what the shop never had together. */
export function Known({ screen: { cautions, untried, jar } }: SheetProps) {
  if (cautions.length === 0 && untried.length === 0) return null;
  return (
    <section aria-labelledby="known">
      <h2 id="known">Before it is poured together</h2>
      <ul className={styles.notes}>
        {cautions.map(({ message, source }) => (
          <li key={message}>
            {message}
            {source && <span className="soft"> ({source})</span>}
          </li>
        ))}
        {untried.length > 0 && (
          <li>
            <b>Never in one tank before, as recorded:</b> {pairsText(untried)}. Try them in a jar: half a litre of your
            water, then in this order {jar.map(({ product, text }) => `${product} ${text}`).join(', ')}. Shake, and wait
            15 minutes. Clumps, gel, curds, warmth, or layers that shaking does not mix again: do not spray them
            together.
          </li>
        )}
      </ul>
    </section>
  );
}

/** Every pair is named, each product with all that it never met; where it is all of them, that is said shorter. */
function pairsText(untried: readonly [string, string][]): string {
  const names = [...new Set(untried.flat())];
  const all = (names.length * (names.length - 1)) / 2;
  if (untried.length > 1 && untried.length === all) return `any two of ${names.join(', ')}`;
  return [...new Set(untried.map(([one]) => one))]
    .map((one) => {
      const others = untried.filter(([first]) => first === one).map(([, other]) => other);
      return `${one} with ${others.join(', ')}`;
    })
    .join('; ');
}
