import { clock } from '@/lib/clock';
import { productTools } from '@/lib/views/product-form';
import { SeverityMark } from '../../_parts/flag-lines';
import styles from './product-tools.module.css';
import { PutAwayForm, RemoveForm } from './put-away-forms';

/** What can be done with a product by hand, and what nobody entered yet, with what each unknown prevents. */
export async function ProductTools({ id }: { id: string }) {
  const tools = await productTools(clock, id);
  if (!tools) return null;
  const { thing, form, archived, unknowns } = tools;
  const at = `/shelf/${encodeURIComponent(id)}`;
  return (
    <>
      {archived && (
        <p className={styles.away}>
          <b>Put away:</b> it is offered nowhere any more. Recipes that hold it are planned as before.
        </p>
      )}
      <p className={`${styles.tools} unprinted`}>
        <a className="button" href={`${at}/edit`}>
          Correct it
        </a>
        {form === 'powder' ? (
          <a className="button" href={`${at}/weigh`}>
            Weigh a teaspoon
          </a>
        ) : (
          <a className="button" href="/shelf/measure-a-drop">
            Measure a drop
          </a>
        )}
      </p>
      {unknowns.length > 0 && (
        <section aria-labelledby="unknown">
          <h2 id="unknown">Not known yet</h2>
          <ul className={styles.unknowns}>
            {unknowns.map(({ field, says, grave }) => (
              <li key={field} data-grave={grave ? '' : undefined}>
                <SeverityMark severity={grave ? 'stop' : 'note'} />
                <span>
                  {says}{' '}
                  <a href={field === 'gramsPerTeaspoon' ? `${at}/weigh` : `${at}/edit#${encodeURIComponent(field)}`}>
                    {field === 'gramsPerTeaspoon' ? 'Weigh it' : 'Enter it'}
                  </a>
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      <details className={`${styles.out} unprinted`}>
        <summary>Put it away or remove it</summary>
        <PutAwayForm thing={thing} archived={archived} />
        <RemoveForm thing={thing} />
      </details>
    </>
  );
}
