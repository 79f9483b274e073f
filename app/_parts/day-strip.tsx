import type { Span } from '@/lib/views/day-spans';
import styles from './day-strip.module.css';

const MINUTES = 24 * 60;
const percent = (minute: number) => `${(minute / MINUTES) * 100}%`;

type DayStripProps = {
  open: Span[];
  spraying: Span[];
  closed: Span[];
  unknown: Span[];
  /** Minutes since midnight, when the strip is of today. */
  now?: number | null;
};

/**
 * One bench through one day, midnight to midnight: opening hours light, spraying solid, keep out hatched, and
 * unknown hatched the other way. The words beside it say the same, so it is a picture and nothing more to a reader.
 */
export function DayStrip({ open, spraying, closed, unknown, now = null }: DayStripProps) {
  return (
    <svg className={styles.strip} aria-hidden="true" focusable="false">
      <rect className={styles.night} y="35%" width="100%" height="30%" />
      <Spans of={open} className={styles.open} />
      <Spans of={closed} className={styles.closed} />
      <Spans of={unknown} className={styles.unknown} />
      <Spans of={spraying} className={styles.spraying} />
      {now !== null && <line className={styles.now} x1={percent(now)} x2={percent(now)} y1="0" y2="100%" />}
    </svg>
  );
}

function Spans({ of, className }: { of: Span[]; className?: string }) {
  return of.map(([from, to]) => (
    <rect
      key={`${from}-${to}`}
      className={className}
      x={percent(from)}
      width={percent(to - from)}
      y="12%"
      height="76%"
    />
  ));
}

const HOURS = [6, 9, 12, 15, 18, 21];

/** The one clock that the strips under it share. */
export function HourScale() {
  return (
    <svg className={styles.scale} aria-hidden="true" focusable="false">
      {HOURS.map((hour) => (
        <text key={hour} x={percent(hour * 60)} y="13" textAnchor="middle">
          {hour}:00
        </text>
      ))}
    </svg>
  );
}
