'use client';

import { useEffect, useRef, useState } from 'react';
import type { Chosen } from './choose-list';
import styles from './csv.module.css';
import { FaultTable } from './fault-table';
import { grouped, linesOf } from './how-far';
import { OpenQuestions } from './open-questions';
import type { Preview, Said } from './send-list';
import { WhichColumns } from './which-columns';
import { WouldChange } from './would-change';

type LookedAtProps = {
  chosen: Chosen;
  preview: Preview;
  said: Said;
  isBusy: boolean;
  onLookAgain: (said: Said) => void;
  onConfirm: () => void;
  onLeave: () => void;
};

/** What a list would do: its faults or its changes, which column became what, and what the file leaves open. */
export function LookedAt({ chosen, preview, said: before, isBusy, onLookAgain, onConfirm, onLeave }: LookedAtProps) {
  const [said, setSaid] = useState(before);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const { faults, warnings, added, changed } = preview;
  const isChanged = JSON.stringify(said) !== JSON.stringify(before);
  const isNothing = added.length + changed.length === 0;
  return (
    <section aria-labelledby="would" className={styles.looked}>
      <h3 id="would" ref={heading} tabIndex={-1}>
        {headingOf(preview)}
      </h3>
      <p className="soft">
        {linesOf(preview.lines)} in {chosen.name}. Nothing has changed yet.
      </p>
      {chosen.note && <p className={styles.note}>{chosen.note}</p>}
      <OpenQuestions open={preview.open} said={said} onSaid={setSaid} />
      {faults.length > 0 && (
        <FaultTable caption="What to put right" says="What is wrong, and what to write" notes={faults} />
      )}
      {warnings.length > 0 && <FaultTable caption="What to look at" says="What was noticed" notes={warnings} />}
      {faults.length === 0 && <WouldChange preview={preview} />}
      {preview.columns.length > 0 && <WhichColumns preview={preview} said={said} onSaid={setSaid} />}
      <p className={styles.row}>
        {isChanged && (
          <button type="button" data-main="" disabled={isBusy} onClick={() => onLookAgain(said)}>
            Look again with that
          </button>
        )}
        {!isChanged && faults.length === 0 && !isNothing && (
          <button type="button" data-main="" disabled={isBusy} onClick={onConfirm}>
            Bring in {countsOf(preview)}
          </button>
        )}
        <button type="button" disabled={isBusy} onClick={onLeave}>
          {isNothing && faults.length === 0 ? 'Nothing would change. Close' : 'Leave it'}
        </button>
      </p>
    </section>
  );
}

function headingOf(preview: Preview): string {
  const { faults, shopName, list } = preview;
  if (faults.length === 1) return 'One thing must be put right first';
  if (faults.length > 1) return `${grouped(faults.length)} things must be put right first`;
  return `What would change in the ${list} of ${shopName}: ${countsOf(preview)}`;
}

/** "12 new, 3 changed", and nothing of what there is none of. */
function countsOf({ added, changed }: Preview): string {
  const counts = [
    added.length > 0 && `${grouped(added.length)} new`,
    changed.length > 0 && `${grouped(changed.length)} changed`,
  ];
  return counts.filter(Boolean).join(', ') || 'nothing';
}
