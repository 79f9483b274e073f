'use client';

import type { ProgramCheck } from '@/lib/views/program-check';
import type { ProgramDraft } from '@/shared/forms/program';
import { FlagLines } from '../../_parts/flag-lines';
import parts from '../../_parts/thing-form.module.css';
import { useAsked } from '../../_parts/use-asked';
import type { ThingForm as Form } from '../../_parts/use-thing-form';
import styles from './program-form.module.css';

type ClosedProps = { form: Form<ProgramDraft>; thing: { shop: string; id: string } };

/** What a program would close as it is typed, and starts that keep customers clear of it. */
export function ClosedWhileTyping({ form: { draft, change }, thing: { shop, id } }: ClosedProps) {
  const check = useAsked<ProgramCheck>({ address: '/api/v1/program-check', body: { shop, program: id, ...draft } });
  return (
    <section aria-labelledby="closed" aria-live="polite" className={parts.scripted}>
      <h2 id="closed">What it closes</h2>
      {check === 'away' && <p className="soft">The shop does not answer. It is checked once the program is saved.</p>}
      {typeof check === 'object' && check !== null && <Checked check={check} set={(at) => change(starting(at))} />}
    </section>
  );
}

const starting = (startTime: string) => (typed: ProgramDraft) => ({ ...typed, startTime });

function Checked({ check: { isReadable, flags, starts }, set }: { check: ProgramCheck; set: (at: string) => void }) {
  if (!isReadable) return <p className="soft">It is checked as soon as recipe, bench, days and times are there.</p>;
  if (flags.length === 0) return <p>In the next eight weeks it meets no opening hours and no closed bench.</p>;
  return (
    <>
      {flags.map(({ flag, more }) => (
        <div key={flag.rule}>
          <FlagLines flags={[flag]} />
          {more > 0 && (
            <p className="soft small">
              And on {more} further {more === 1 ? 'day' : 'days'} of the next eight weeks.
            </p>
          )}
        </div>
      ))}
      {starts.length > 0 && (
        <div className={styles.starts}>
          {starts.map(({ words, at }) =>
            at === null ? (
              <p key={words}>Clear start: {words}.</p>
            ) : (
              <button key={words} type="button" onClick={() => set(at)}>
                Start at {words}
              </button>
            ),
          )}
        </div>
      )}
    </>
  );
}
