import type { BoardBench } from '@/lib/views/keep-out-board';
import styles from './keep-out-board.module.css';

/** The shape of a state, which the word beside it repeats: a cross, a question, an open ring. */
export function KeepOutMark({ state }: { state: BoardBench['state'] }) {
  return (
    <svg className={styles.mark} viewBox="0 0 48 48" aria-hidden="true" focusable="false">
      {state === 'closed' && <path d="M4 4 H44 V44 H4 Z M13 13 L35 35 M35 13 L13 35" />}
      {state === 'unknown' && (
        <path d="M24 3 L45 24 L24 45 L3 24 Z M18 19 a6 6 0 1 1 8.5 5.5 q-2.5 1.3 -2.5 4.5 M24 34.5 V35.5" />
      )}
      {state === 'open' && <circle cx="24" cy="24" r="19" />}
    </svg>
  );
}
