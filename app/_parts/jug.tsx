import bottle from './bottle.module.css';
import styles from './jug.module.css';

type JugProps = {
  /** The part of what the sprayer holds that one fill takes, 0 to 1. */
  level: number;
  liquid: 'feed' | 'insect' | 'fungus' | 'other';
};

/** One fill of a batch as a jug, filled as far as the sprayer will be. */
export function Jug({ level, liquid }: JugProps) {
  const top = 56 - 46 * level;
  const lean = (y: number) => ((56 - y) / 50) * 3;
  return (
    <svg className={styles.jug} width="54" height="58" viewBox="0 0 54 58" aria-hidden="true" focusable="false">
      <path className={bottle[liquid]} d={`M${9 - lean(top)} ${top} L9 56 H39 L${39 + lean(top)} ${top} Z`} />
      <path className={styles.glass} d="M1 2 L6 6 L9 56 H39 L42 6 M42 14 q10 2 8 16 q-2 10 -10 12" />
    </svg>
  );
}
