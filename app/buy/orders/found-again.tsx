import { type Day, readDay } from '@/shared/time/day';
import { showDay } from '@/shared/time/show-day';
import styles from './order-form.module.css';
import type { Written } from './use-written';

type FoundAgainProps = { written: Written; isChange: boolean; today: Day };

/** Says that what stands in the form was written before and not sent, and lets it be thrown away, and taken back. */
export function FoundAgain({ written: { found, throwAway, takeBack }, isChange, today }: FoundAgainProps) {
  if (!found) return null;
  const day = readDay(found.written.writtenOn);
  return (
    <div role="status" className={styles.found}>
      <p>
        {found.isBack
          ? `Not sent yet: here is what you wrote ${day.ok ? `on ${showDay(day.value, today)}` : 'before'}.`
          : 'Thrown away.'}
      </p>
      {found.isBack && found.gone.length > 0 && <p className="grave">No longer offered: {found.gone.join('; ')}.</p>}
      <button type="button" onClick={found.isBack ? throwAway : takeBack}>
        {!found.isBack ? 'Take it back' : isChange ? 'Throw it away: show the order as it stands' : 'Throw it away'}
      </button>
    </div>
  );
}
