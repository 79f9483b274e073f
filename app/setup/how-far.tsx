import styles from './csv/csv.module.css';

type HowFarProps = {
  words: string;
  /** From 0 to 1; left out where nobody knows: then the bar only says that something is going on. */
  share: number | undefined;
  /** Null where nothing can be stopped any more. */
  onStop: (() => void) | null;
};

/** How far something large is, in words and as a bar, with the way to stop it. */
export function HowFar({ words, share, onStop }: HowFarProps) {
  return (
    <div className={styles.far}>
      <p aria-live="polite">{words}</p>
      <progress max={1} value={share} aria-label="How far it is" />
      {onStop && (
        <button type="button" onClick={onStop}>
          Break off
        </button>
      )}
    </div>
  );
}
