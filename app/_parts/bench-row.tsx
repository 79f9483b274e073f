import type { BenchStanding } from '@/lib/views/bench-standing';
import type { DayClock } from '@/lib/views/day-clock';
import { showUntil } from '@/shared/time/show-day';
import styles from './bench-row.module.css';
import { BenchTag } from './bench-tag';
import { DayStrip } from './day-strip';
import { Figure } from './figure';
import type { Ways } from './shown-text';
import { WaysOut } from './ways-out';

type BenchRowProps = { bench: BenchStanding; clock: DayClock; ways: Ways };

/** One bench: its tag, its day, and in words whether anybody may stand there. */
export function BenchRow({ bench, clock, ways }: BenchRowProps) {
  return (
    <li className={styles.row} id={bench.anchor} data-state={bench.state}>
      <BenchTag name={bench.name} />
      <DayStrip strip={bench.strip} clock={clock} />
      <p className={styles.state}>
        <b>
          <State bench={bench} ways={ways} />
        </b>{' '}
        <span className={styles.why}>
          {whyText(bench, ways)}{' '}
          {bench.ways.length > 0 && (
            <span className={styles.ways}>
              <WaysOut ways={bench.ways} of={bench.name} />
            </span>
          )}
        </span>
      </p>
    </li>
  );
}

function State({ bench, ways }: Omit<BenchRowProps, 'clock'>) {
  const { state, until, closedUntil, elapsedAt } = bench;
  if (state === 'unknown') {
    return (
      <span className="grave">
        <Mark shape="?" />
        <Figure of={until} ways={ways} />
      </span>
    );
  }
  if (closedUntil !== null) {
    return (
      <span className="grave">
        <Mark shape="✕" />
        closed until <Figure of={until} ways={ways} />
      </span>
    );
  }
  return (
    <Figure of={until} ways={ways}>
      {elapsedAt === null ? 'nothing recorded' : `interval elapsed ${showUntil(elapsedAt, ways.zone, ways.today)}`}
    </Figure>
  );
}

const Mark = ({ shape }: { shape: string }) => (
  <span className={styles.mark} aria-hidden="true">
    {shape}
  </span>
);

/** What the state rests on, and what today will still bring. */
function whyText({ state, elapsedAt, because, next }: BenchStanding, ways: Ways): string {
  const clock = (instant: Parameters<typeof showUntil>[0]) => showUntil(instant, ways.zone, ways.today);
  const reasons = state === 'open' ? (elapsedAt === null ? [] : ['as recorded']) : because;
  if (!next) return state === 'open' ? [...reasons, 'nothing due today'].join(' · ') : reasons.join(' · ');
  const until = next.reopensAt === null ? 'on, not known until when' : `to ${clock(next.reopensAt)}`;
  return [...reasons, `closed ${clock(next.startsAt)} ${until}`].join(' · ');
}
