import bottle from '@/app/_parts/bottle.module.css';
import type { PlanProduct } from '@/shared/mix/mix-plan';
import styles from './do.module.css';

type FillingJugProps = {
  /** How full it is, 0 to 1. */
  level: number;
  /** What is in it last; null for water alone. */
  liquid: PlanProduct['liquid'] | null;
};

const [TOP, FLOOR] = [34, 204];

/** The jug as it fills, from water to the mark. */
export function FillingJug({ level, liquid }: FillingJugProps) {
  const height = FLOOR - (FLOOR - TOP) * level;
  const lean = ((FLOOR - height) / (FLOOR - 20)) * 12;
  return (
    <svg className={styles.jug} viewBox="0 0 124 214" aria-hidden="true">
      <path
        className={liquid ? bottle[liquid] : styles.water}
        d={`M${20 - lean} ${height} L20 ${FLOOR} H92 L${92 + lean} ${height} Z`}
      />
      <path className={styles.surface} d={`M${20 - lean} ${height} H${92 + lean}`} />
      <path className={styles.glass} d="M0 12 L8 20 L18 206 H94 L104 20 M103 44 q14 4 12 40 q-3 30 -16 40" />
      <path className={styles.marks} d="M20 172h12M18.4 140h12M16.6 108h12M14.8 76h12M13 44h12" />
    </svg>
  );
}
