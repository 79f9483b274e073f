import type { DatabaseState } from '@/lib/views/database-state';
import damage from '../_parts/damage.module.css';

/** How sound the database is; where it is not, what was found, and the way back to a sound one. */
export function DatabaseSection({ database }: { database: DatabaseState }) {
  const { file, state } = database;
  return (
    <section aria-labelledby="database">
      <h2 id="database">The database</h2>
      {state === 'damaged' ? (
        <Found database={database} />
      ) : (
        <>
          <p>{WORDS[state]}</p>
          <p className="soft small">
            It is the file <code>{file}</code>.
          </p>
        </>
      )}
    </section>
  );
}

const WORDS = {
  sound: 'Every start checks all of it, and so does every day. Nothing is wrong with it.',
  'being checked': 'All of it is being checked. Until that is done, every bench reads keep out.',
};

function Found({ database: { file, found, more, restore, isOfClock } }: { database: DatabaseState }) {
  return (
    <div role="alert" className={damage.damage}>
      <p>
        <b>Not everything is as it was written.</b> Keep out of the benches until that is put right.
      </p>
      <ul>
        {found.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {more > 0 && (
        <p>
          {more} more; <code>npm run -s shop -- verify</code> tells all of them.
        </p>
      )}
      {isOfClock && (
        <p>
          What was noted of the clock is made anew once somebody has confirmed the time:{' '}
          <a href="/setup/clock">The clock</a>.
        </p>
      )}
      <p>
        {restore} Until then, <code>{file}</code> is left as it is.
      </p>
    </div>
  );
}
