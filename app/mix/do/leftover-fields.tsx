'use client';

import { splitAmount } from '@/shared/measure/amount-typed';
import type { MixProgress } from '@/shared/mix/mix-progress';
import type { Fault } from '@/shared/outcome';
import { instantOf } from '@/shared/time/instant';
import { showClock } from '@/shared/time/show-day';
import { AnswerField } from './answer-field';
import { BenchTicks } from './bench-ticks';
import styles from './do.module.css';
import type { Act } from './frame';

/** Spray that was left over and what became of it: first, the benches that could take it now. */
export function LeftoverFields({ mix, act, faults }: { mix: MixProgress; act: Act; faults: Fault[] }) {
  const { plan, answers, leftoverBenches } = mix;
  const isLeft = answers.leftover.trim() !== '';
  // Left over is read off the jug that it was mixed in.
  const unit = splitAmount(plan.fillText, 'spray').unit ?? 'mL';
  const asOf = showClock(instantOf(plan.asOf), plan.zone);
  return (
    <>
      <AnswerField
        {...{ mix, act, faults }}
        field="leftover"
        label="Spray left over (empty: none)"
        placeholder={` ${unit}`}
        isSpray
      />
      {isLeft && (
        <div className={styles.change}>
          <p>
            Mixed spray is neither kept nor poured away: what its label says governs.
            {plan.leftover.length > 0
              ? ` These benches could take it, as the shop stood at ${asOf}. A bench that takes it closes like the others.`
              : ` As the shop stood at ${asOf}, no other bench was open and could take it within its label.`}
          </p>
          {plan.leftover.length > 0 && (
            <BenchTicks
              legend="It was sprayed on"
              benches={plan.leftover.map(({ id, name, roomText, inProgram }) => ({
                ...{ id, name },
                beside: `takes ${roomText}${inProgram ? ', and a program sprays this there' : ''}`,
              }))}
              ticked={leftoverBenches}
              tick={(ids) => act({ do: 'leftover-benches', ids })}
            />
          )}
          <AnswerField
            {...{ mix, act, faults }}
            field="leftoverWent"
            label={leftoverBenches.length > 0 ? 'Anything else became of it (if so)' : 'What became of it'}
          />
        </div>
      )}
    </>
  );
}
