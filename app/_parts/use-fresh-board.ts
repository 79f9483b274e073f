'use client';

import { useEffect, useRef, useState } from 'react';
import { clock } from '@/lib/clock';
import type { Board } from '@/lib/views/keep-out-board';

const REFRESH_MS = 25_000;
const AGAIN_MS = 5_000;
const ANSWER_MS = 8_000;
/** After so long without the shop's word, nothing that is shown counts any more. */
const LONGEST_MS = 60_000;
const APART_MS = 5 * 60_000;
/** A page that comes to life sooner than this was made just now, and was not kept anywhere. */
const NEW_MS = 10_000;

export type FreshBoard<First> = {
  board: Board | First;
  /** Whether the shop has said so within the last minute. */
  isConfirmed: boolean;
  /** Whether the clock of this device and the shop's are more than five minutes apart. */
  isApart: boolean;
  /** False until the page is alive; until then the style of the page lets it go stale. */
  isAlive: boolean;
};

/** When the shop confirmed a board: by a count that cannot be set, and by this device's clock, which may be. */
type Confirmed = { board: Board | null; steady: number; wall: number };

/**
 * The keep-out board, asked of the shop again and again. What this device thinks of the time never opens a bench: it can
 * only find that a board is too old, by either of its clocks, since one of them may stand still while it sleeps.
 *
 * Takes   the board that the page was made with (null where the page shows its states by itself), and where to ask for
 *         the next
 */
export function useFreshBoard<First extends Board | null>(first: First, from: string): FreshBoard<First> {
  const [confirmed, setConfirmed] = useState<Confirmed | null>(null);
  const [fresh, setFresh] = useState({ isConfirmed: true, isApart: false, isAlive: false });
  const last = useRef<Confirmed | null>(null);
  const shop = useRef(first?.shop ?? null);
  useEffect(() => {
    const begun = clock.steady();
    // Counted from when the page was asked for. A page that was kept, and shown again, is asked for anew first.
    if (begun < NEW_MS) last.current = { board: first, steady: 0, wall: clock.now() - begun };
    const show = () => setFresh(judged(last.current, first));
    const stop = keepAsking(from, {
      onAnswer: (answer) => {
        // This device was moved to another shop meanwhile: the page that shows the one before is made anew.
        const told = answer?.board?.shop ?? shop.current;
        if (shop.current !== null && told !== shop.current) location.reload();
        shop.current = told;
        last.current = answer;
        setConfirmed(answer);
        show();
      },
      // Whatever was shown before somebody came back counts only once the shop has said so again.
      onReturn: () => {
        last.current = null;
        show();
      },
      onTick: show,
      isStale: () => isBeingRead(last.current?.board ?? first) || !judged(last.current, first).isConfirmed,
    });
    show();
    return stop;
  }, [first, from]);
  return { board: confirmed?.board ?? first, ...fresh };
}

function judged(last: Confirmed | null, first: Board | null): Omit<FreshBoard<null>, 'board'> {
  const [steady, wall] = [clock.steady(), clock.now()];
  const isOld = last === null || steady - last.steady > LONGEST_MS || Math.abs(wall - last.wall) > LONGEST_MS;
  const [shop, here] = last?.board ? [last.board, last.wall] : [first, wall];
  const isApart = shop !== null && Math.abs(here - shop.now) > APART_MS;
  return { isConfirmed: !isOld, isApart, isAlive: true };
}

/** A shop that is being read says more in a moment. */
const isBeingRead = (board: Board | null): boolean => board?.doubt === 'reading';

type Asking = {
  onAnswer: (answer: Confirmed | null) => void;
  onReturn: () => void;
  onTick: () => void;
  isStale: () => boolean;
};

/** Asks for the board every so often, sooner while there is no answer, and whenever somebody comes back to the page. */
function keepAsking(from: string, { onAnswer, onReturn, onTick, isStale }: Asking): () => void {
  let isOver = false;
  let isAsking = false;
  let askedAt = clock.steady();
  const ask = async () => {
    if (isAsking) return;
    isAsking = true;
    askedAt = clock.steady();
    const answer = await askedBoard(from);
    isAsking = false;
    if (!isOver && answer !== 'silence') onAnswer(answer);
  };
  const tick = () => {
    onTick();
    if (clock.steady() - askedAt >= (isStale() ? AGAIN_MS : REFRESH_MS)) void ask();
  };
  const back = (event: Event) => {
    if (document.visibilityState !== 'visible') return;
    if (event.type === 'pageshow' && !(event as PageTransitionEvent).persisted) return;
    onReturn();
    void ask();
  };
  const timer = setInterval(tick, 1_000);
  const returns = [
    [document, 'visibilitychange'],
    [document, 'resume'],
    [window, 'pageshow'],
    [window, 'online'],
  ] as const;
  for (const [target, event] of returns) target.addEventListener(event, back);
  void ask();
  return () => {
    isOver = true;
    clearInterval(timer);
    for (const [target, event] of returns) target.removeEventListener(event, back);
  };
}

/** What the shop says now. Null: it says that there is no such board any more. Silence: it says nothing readable. */
async function askedBoard(from: string): Promise<Confirmed | null | 'silence'> {
  const asked = { steady: clock.steady(), wall: clock.now() };
  try {
    const answer = await fetch(from, { cache: 'no-store', redirect: 'error', signal: AbortSignal.timeout(ANSWER_MS) });
    if (answer.status === 404) return null;
    const board: unknown = answer.ok ? await answer.json() : null;
    return isBoard(board) ? { board, ...asked } : 'silence';
  } catch {
    // The network or the shop is away. What is shown grows old meanwhile, and stops counting.
    return 'silence';
  }
}

/** Anything that is not wholly a board is no confirmation of one. */
function isBoard(answer: unknown): answer is Board {
  if (typeof answer !== 'object' || answer === null) return false;
  const { now, asOf, benches } = answer as Partial<Record<keyof Board, unknown>>;
  return Number.isSafeInteger(now) && typeof asOf === 'string' && Array.isArray(benches) && benches.every(isBench);
}

const isBench = (bench: unknown): boolean =>
  typeof bench === 'object' &&
  bench !== null &&
  ['id', 'anchor', 'name', 'state', 'word'].every((field) => typeof Reflect.get(bench, field) === 'string');
