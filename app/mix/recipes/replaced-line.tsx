import type { Replaced } from '@/lib/views/solutions';
import { mgText } from './line-reading';
import styles from './recipe-form.module.css';

/** What was put in the place of a line, beside what stood there, with the strength of either. */
export function ReplacedLine({ replaced: { line, was, now } }: { replaced: Replaced }) {
  return (
    <section className={styles.replaced} aria-labelledby="replaced">
      <h2 id="replaced" className={styles.heading}>
        Line {line + 1} is poured from a stock solution here
      </h2>
      <dl>
        <Side title="It was" side={was} />
        <Side title="It is" side={now} />
      </dl>
      <p className="soft">Nothing is changed before you save it.</p>
    </section>
  );
}

function Side({ title, side: { product, dose, strength } }: { title: string; side: Replaced['was'] }) {
  return (
    <div>
      <dt>{title}</dt>
      <dd>
        <b>{dose}</b> of {product}
        {strength.length > 0 && (
          <span className="soft">
            {' '}
            · {strength.map(({ substance, mgPerL }) => `${substance} ${mgText(mgPerL)}`).join(' · ')}
          </span>
        )}
      </dd>
    </div>
  );
}
