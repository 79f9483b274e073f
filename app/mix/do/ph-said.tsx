import type { MixPlan } from '@/shared/mix/mix-plan';
import styles from './do.module.css';

type PhProps = { plan: Pick<MixPlan, 'pH'> };

/** How far the acid that the recipe pours itself brings the pH, and whether more is to be added; nothing without one. */
export const OwnAcidSaid = ({ plan: { pH } }: PhProps) => <Said sentences={[pH?.own]} />;

/** What the estimate of the pH takes for granted, and what nobody can count. */
export const PhSaid = ({ plan: { pH } }: PhProps) => <Said sentences={[pH?.message, pH?.unreckoned]} />;

const Said = ({ sentences }: { sentences: (string | null | undefined)[] }) =>
  sentences
    .flatMap((sentence) => sentence ?? [])
    .map((sentence) => (
      <p key={sentence} className={styles.why}>
        {sentence}
      </p>
    ));
