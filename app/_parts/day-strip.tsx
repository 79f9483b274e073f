import type { BenchStrip, MinuteSpan } from '@/lib/engine/keepout/planned-closures';
import type { DayClock } from '@/lib/views/day-clock';
import styles from './day-strip.module.css';

type DayStripProps = { strip: BenchStrip | null; clock: DayClock };

/**
 * One bench through one day, midnight to midnight: opening hours light, spraying solid, keep out hatched, and
 * unknown hatched the other way. The words beside it say the same, so it is a picture and nothing more to a reader.
 */
export function DayStrip({ strip, clock }: DayStripProps) {
  const share = (minute: number) => `${(minute / clock.minutes) * 100}%`;
  return (
    <svg className={styles.strip} aria-hidden="true" focusable="false">
      <rect className={styles.night} y="35%" width="100%" height="30%" />
      <Spans of={strip?.open} className={styles.open} share={share} />
      <Spans of={strip?.closed} className={styles.closed} share={share} />
      <Spans of={strip?.unknown} className={styles.unknown} share={share} />
      <Spans of={strip?.spraying} className={styles.spraying} share={share} />
      {clock.now !== null && (
        <line className={styles.now} x1={share(clock.now)} x2={share(clock.now)} y1="0" y2="100%" />
      )}
    </svg>
  );
}

type SpansProps = { of: MinuteSpan[] | undefined; className: string | undefined; share: (minute: number) => string };

function Spans({ of = [], className, share }: SpansProps) {
  // Two records can close a bench for the very same time, which is drawn once.
  const spans = new Map(of.map((span) => [span.join('-'), span]));
  return [...spans].map(([key, [from, to]]) => (
    <rect key={key} className={className} x={share(from)} width={share(to - from)} y="12%" height="76%" />
  ));
}

type HourScaleProps = {
  clock: DayClock;
  /** How many hours lie between two that are written. */
  every?: 3 | 6;
};

/** The one clock that the strips under it share. */
export function HourScale({ clock, every = 3 }: HourScaleProps) {
  const hours = clock.hours.filter(({ clock: minute }) => minute > 0 && minute % (every * 60) === 0);
  return (
    <svg className={styles.scale} aria-hidden="true" focusable="false">
      {hours.map(({ clock: minute, at }) => (
        <text key={at} x={`${(at / clock.minutes) * 100}%`} y="13" textAnchor="middle">
          {minute / 60}:00
        </text>
      ))}
    </svg>
  );
}
