'use client';

import styles from './row-buttons.module.css';

type RowButtonsProps = {
  /** What the row is about, for a screen reader. */
  called: string;
  place: number;
  of: number;
  onMove: (by: -1 | 1) => void;
  onTakeOut: () => void;
};

/** Moves a row of a form up or down, or takes it out. */
export function RowButtons({ called, place, of, onMove, onTakeOut }: RowButtonsProps) {
  return (
    <span className={styles.buttons}>
      <button type="button" disabled={place === 0} onClick={() => onMove(-1)} aria-label={`Move ${called} up`}>
        ↑
      </button>
      <button type="button" disabled={place === of - 1} onClick={() => onMove(1)} aria-label={`Move ${called} down`}>
        ↓
      </button>
      <button type="button" className={styles.out} onClick={onTakeOut} aria-label={`Take out ${called}`}>
        Take out
      </button>
    </span>
  );
}
