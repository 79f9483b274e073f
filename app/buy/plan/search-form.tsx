'use client';

import { useRouter } from 'next/navigation';
import { useActionState, useEffect, useState } from 'react';
import type { PlanProgress, PlanScreen } from '@/lib/views/purchase-plan';
import { IDLE } from '@/shared/forms/form-state';
import { PLAN_WEEKS, SEARCH_SECONDS } from '@/shared/forms/purchase-plan';
import { exact } from '@/shared/quantity/exact';
import { wholeUp } from '@/shared/quantity/rounding';
import { FormAnswer } from '../../_parts/form-field';
import { HiddenFields } from '../../_parts/hidden-fields';
import { useCommandId } from '../../_parts/use-command-id';
import { beginPlanAction, stopPlanAction } from './actions';
import styles from './plan.module.css';

/** How far ahead, and the search: begin it, see how far it is, stop it. */
export function SearchForm({ screen }: { screen: PlanScreen }) {
  const { weeks, state } = screen;
  return (
    <div className={styles.search}>
      <form action="/buy/plan" method="get" className={styles.ask}>
        <div>
          <label htmlFor="weeks">Weeks ahead</label>
          <select id="weeks" name="weeks" defaultValue={weeks}>
            {PLAN_WEEKS.map((each) => (
              <option key={each}>{each}</option>
            ))}
          </select>
        </div>
        <button type="submit">Show</button>
      </form>
      {state.kind === 'running' ? <UnderWay screen={screen} /> : <Begin screen={screen} />}
    </div>
  );
}

function Begin({ screen: { shopId, weeks, formId, isSearched, state } }: { screen: PlanScreen }) {
  const [answer, send, isSending] = useActionState(beginPlanAction, IDLE);
  const commandId = useCommandId(answer);
  return (
    <form action={send} className={styles.ask}>
      <HiddenFields of={{ commandId: commandId || formId, shop: shopId, weeks: String(weeks) }} />
      <div>
        <label htmlFor="seconds">Seconds at most</label>
        <select id="seconds" name="seconds" defaultValue="10">
          {SEARCH_SECONDS.map((each) => (
            <option key={each}>{each}</option>
          ))}
        </select>
      </div>
      <button type="submit" data-main="" disabled={isSending}>
        {isSending ? 'Beginning…' : isSearched ? 'Look once more' : 'Look for the cheapest plan'}
      </button>
      {state.kind === 'failed' && <p className="grave">The search broke off. Look once more, or for fewer weeks.</p>}
      {answer.status !== 'done' && <FormAnswer state={answer} />}
    </form>
  );
}

function UnderWay({ screen }: { screen: PlanScreen }) {
  const { shopId, weeks, formId } = screen;
  const [answer, send, isSending] = useActionState(stopPlanAction, IDLE);
  const commandId = useCommandId(answer);
  const progress = useProgress(screen);
  const running = progress?.state.kind === 'running' ? progress.state : null;
  return (
    <form action={send} className={styles.ask}>
      <HiddenFields of={{ commandId: commandId || formId, shop: shopId, weeks: String(weeks) }} />
      <div className={styles.progress}>
        <p role="status">
          <b>Looking for the cheapest plan.</b> {progress?.words}
        </p>
        <progress
          aria-label="Time that it may take"
          max={running?.seconds ?? 1}
          value={running ? running.seconds - running.secondsLeft : undefined}
        />
        {running && <p className="soft">At most {wholeUp(exact(running.secondsLeft))} s more.</p>}
        <noscript>
          <p>Reload the page to see whether it is found.</p>
        </noscript>
      </div>
      <button type="submit" disabled={isSending}>
        Stop, and show the best so far
      </button>
      {answer.status === 'refused' && <FormAnswer state={answer} />}
    </form>
  );
}

const EVERY_MS = 400;

/** Once it is found the page is asked for anew, and once more only when that has not come for so long. */
const AGAIN_MS = 8_000;

/** How far it is, asked again and again, each time after the last answer has come. */
function useProgress({ shopId, weeks }: PlanScreen): PlanProgress | null {
  const [progress, setProgress] = useState<PlanProgress | null>(null);
  const router = useRouter();
  useEffect(() => {
    const stop = new AbortController();
    let timer: ReturnType<typeof setTimeout>;
    const look = async () => {
      const query = new URLSearchParams({ shop: shopId, weeks: String(weeks) });
      const said = await ask(`/buy/plan/progress?${query}`, stop.signal);
      if (stop.signal.aborted) return;
      if (said) setProgress(said);
      const isOver = said !== null && said.state.kind !== 'running';
      if (isOver) router.refresh();
      timer = setTimeout(look, isOver ? AGAIN_MS : EVERY_MS);
    };
    timer = setTimeout(look, EVERY_MS);
    return () => {
      clearTimeout(timer);
      stop.abort();
    };
  }, [shopId, weeks, router]);
  return progress;
}

async function ask(address: string, signal: AbortSignal): Promise<PlanProgress | null> {
  try {
    const answer = await fetch(address, { signal });
    return answer.ok ? await answer.json() : null;
  } catch {
    // The shop is away for a moment, or the page was left. It is asked again.
    return null;
  }
}
