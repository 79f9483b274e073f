import type { MixPlan } from '@/shared/mix/mix-plan';
import styles from './do.module.css';

/** What the estimate of the pH takes for granted: acid that is in already, and what nobody can count. */
export function PhSaid({ plan: { pH } }: { plan: Pick<MixPlan, 'pH'> }) {
  const said = [pH?.own, pH?.message, pH?.unreckoned].flatMap((sentence) => sentence ?? []);
  return said.map((sentence) => (
    <p key={sentence} className={styles.why}>
      {sentence}
    </p>
  ));
}
