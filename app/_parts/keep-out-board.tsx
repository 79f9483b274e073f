'use client';

import type { ReactNode } from 'react';
import type { Board, BoardBench } from '@/lib/views/keep-out-board';
import { BenchTag } from './bench-tag';
import styles from './keep-out-board.module.css';
import { KeepOutMark } from './keep-out-mark';
import { useFreshBoard } from './use-fresh-board';
import { WaysOut } from './ways-out';

type KeepOutBoardProps = { first: Board; from: string; children?: ReactNode };

/**
 * Every bench, large enough to be read across a room. What is shown counts only while the shop confirms it: after a
 * minute without its word, the whole board keeps people out. Where no script runs, the style sheet sees to that.
 */
export function KeepOutBoard({ first, from, children }: KeepOutBoardProps) {
  const { board, isConfirmed, isApart, isAlive } = useFreshBoard(first, from);
  return (
    <div className={styles.board} data-alive={isAlive || undefined}>
      <p className={styles.asOf}>
        As of <b>{board.asOf}</b>, {board.zone}. {children}
      </p>
      {isApart && (
        <p role="alert" className={styles.banner}>
          This device’s clock and the shop’s are more than five minutes apart. Only the shop’s counts.
        </p>
      )}
      <div className={styles.gone} data-shown={(isAlive && !isConfirmed) || undefined} role="status">
        <Unconfirmed asOf={board.asOf} />
      </div>
      {board.doubt !== null && <Doubted doubt={board.doubt} />}
      <ul className={styles.benches}>
        {board.benches.map((bench) => (
          <BenchCard key={bench.id} bench={isConfirmed ? bench : unconfirmed(bench)} isConfirmed={isConfirmed} />
        ))}
      </ul>
    </div>
  );
}

const unconfirmed = (bench: BoardBench): BoardBench => ({
  ...bench,
  state: 'unknown',
  word: 'KEEP OUT (not confirmed)',
  when: null,
  left: null,
  because: [],
  ways: [],
});

const Unconfirmed = ({ asOf }: { asOf: string }) => (
  <p className={styles.banner}>
    <b>KEEP OUT of every bench (not confirmed).</b> The shop has not confirmed this since {asOf}. It counts again once
    the shop answers; until then ask somebody who knows.
  </p>
);

const DOUBTS: Record<NonNullable<Board['doubt']>, ReactNode> = {
  clock: (
    <>
      <b>KEEP OUT of every bench (clock).</b> The clock of the shop’s computer was set, or nobody watched it, so no
      interval can be counted. It counts again once the owner has confirmed the time.{' '}
    </>
  ),
  restored: (
    <>
      <b>KEEP OUT of every bench (not known).</b> A backup was put back, so what was sprayed after it is not on record.
      The board counts again once the owner has entered it and confirmed that.{' '}
    </>
  ),
  records: (
    <>
      <b>KEEP OUT of every bench (not known).</b> Something in the shop’s books is lost or was changed. Setup says what,
      and what to do.
    </>
  ),
  unreadable: (
    <>
      <b>KEEP OUT of every bench (not known).</b> The shop’s records cannot be read now. The reason is in the log of the
      shop’s computer.
    </>
  ),
  reading: (
    <>
      <b>KEEP OUT of every bench (not known).</b> The shop’s records are being read. This takes a few seconds.
    </>
  ),
};

function Doubted({ doubt }: { doubt: NonNullable<Board['doubt']> }) {
  return (
    <p role="alert" className={styles.banner}>
      {DOUBTS[doubt]}
      {doubt === 'clock' && <a href="/setup/clock">Look at the clock</a>}
      {doubt === 'restored' && <a href="/setup/clock">Enter and confirm</a>}
    </p>
  );
}

/** One bench: its tag, a shape, the word, until when, and what that rests on. */
function BenchCard({ bench, isConfirmed }: { bench: BoardBench; isConfirmed: boolean }) {
  const { anchor, name, state, word, when, left, because, ways, working, id } = bench;
  return (
    <li className={styles.bench} id={anchor} data-state={isConfirmed ? state : 'stale'}>
      <h2 className={styles.name}>
        <BenchTag name={name} />
      </h2>
      <p className={styles.state}>
        <KeepOutMark state={state} />
        <span>
          <b className={styles.word}>{word}</b> {when && <span className={styles.when}>{when}</span>}
        </span>
      </p>
      {left && <p>{left}</p>}
      {because.length > 0 && <p className={styles.because}>{because.join(' · ')}</p>}
      {ways.length > 0 && (
        <p className={styles.links}>
          <WaysOut ways={ways} of={name} />
        </p>
      )}
      {working !== null && isConfirmed && (
        <p className={styles.links}>
          <a href={`/working?figure=${encodeURIComponent(working)}`} data-figure={working}>
            How this is known
          </a>
          {state !== 'open' && <a href={`/keep-out/notice?bench=${encodeURIComponent(id)}`}>Notice to print</a>}
        </p>
      )}
    </li>
  );
}
