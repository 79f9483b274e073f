'use client';

import { lazy, Suspense, useEffect, useRef, useState } from 'react';
import type { Working } from '@/lib/engine/working/shown';
import type { Ways } from './shown-text';
import styles from './working-opener.module.css';

// Only whoever opens a figure pays for the code that writes it out.
const WorkingOpened = lazy(async () => ({ default: (await import('./working-opened')).WorkingOpened }));

/**
 * Opens the working of any figure in place. Figures are ordinary links to the page of their working, so without this,
 * or when the answer does not come, the link is simply followed.
 */
export function WorkingOpener({ ways }: { ways: Ways }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [trail, setTrail] = useState<Working[]>([]);
  const current = trail.at(-1);

  useEffect(() => {
    const open = (event: MouseEvent) => {
      const link = figureClicked(event);
      if (!link) return;
      event.preventDefault();
      const within = dialog.current?.contains(link) ?? false;
      askWorking(link).then((working) => {
        if (!working) return location.assign(link.href);
        setTrail((earlier) => (within ? [...earlier, working] : [working]));
        if (!dialog.current?.open) dialog.current?.showModal();
      });
    };
    document.addEventListener('click', open);
    return () => document.removeEventListener('click', open);
  }, []);

  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: a click beside the sheet closes it; from the keyboard Escape does.
    <dialog
      ref={dialog}
      className={styles.dialog}
      aria-labelledby={HEADING}
      onClose={() => setTrail([])}
      onClick={(event) => event.target === dialog.current && dialog.current?.close()}
    >
      <div className={styles.inside}>
        <div className={styles.top}>
          {trail.length > 1 ? (
            <button type="button" onClick={() => setTrail((earlier) => earlier.slice(0, -1))}>
              Back
            </button>
          ) : (
            <span className="soft">How this was reached</span>
          )}
          <button type="button" onClick={() => dialog.current?.close()}>
            Close
          </button>
        </div>
        <Suspense>{current && <WorkingOpened working={current} ways={ways} headingId={HEADING} />}</Suspense>
      </div>
    </dialog>
  );
}

const HEADING = 'working-opened';

/** The figure that a plain click, or Enter, was meant for; a click that asks for a new tab is left alone. */
function figureClicked(event: MouseEvent): HTMLAnchorElement | null {
  const plain = event.button === 0 && !event.metaKey && !event.ctrlKey && !event.shiftKey && !event.altKey;
  if (!plain || event.defaultPrevented || !(event.target instanceof Element)) return null;
  return event.target.closest<HTMLAnchorElement>('a[data-figure]');
}

async function askWorking(link: HTMLAnchorElement): Promise<Working | null> {
  const address = encodeURIComponent(link.dataset.figure ?? '');
  const answer = await fetch(`/api/v1/working?figure=${address}`).catch(() => null);
  return answer?.ok ? answer.json() : null;
}
