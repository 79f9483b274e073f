import { useId } from 'react';
import type { BottleSeen } from '@/lib/views/bottle-seen';
import { path, pixels } from '@/shared/measure/pixels';
import styles from './bottle.module.css';

/** Height in pixels of a one-litre bottle; the others follow by the cube root of what they hold. */
const LITRE = 106;
const BASE = 2;

type BottleProps = { bottle: BottleSeen; scale?: number };

/**
 * One container as it stands on the shelf: drawn to scale, filled to its level, cap off once opened, its last usable
 * day on a paper tag. What will be left over when that day has passed is hatched from the bottom, since the rest is
 * drawn off above it. A powder stands in a jar; what has yet to come is drawn in broken lines; the tag of one past its
 * day is crossed out. The words beside it say the same.
 */
export function Bottle({ bottle, scale = 1 }: BottleProps) {
  const id = useId();
  const { height, shape } = drawn(bottle, scale);
  const { width, mouth, top, outline } = shape;
  const level = (part: number) => pixels(height - BASE - (height - BASE - top) * part);
  const [wide, high] = [pixels(width), pixels(height)];
  const room = { left: 3, right: (bottle.tag ? TAG.width : 20) + 6, above: ABOVE };
  return (
    <svg
      className={styles.bottle}
      data-coming={bottle.coming || undefined}
      width={pixels(room.left + wide + room.right)}
      height={pixels(high + room.above)}
      viewBox={path`${-room.left} ${-room.above} ${room.left + wide + room.right} ${high + room.above}`}
      aria-hidden="true"
      focusable="false"
    >
      <clipPath id={id}>
        <path d={`${outline} Z`} />
      </clipPath>
      <g clipPath={`url(#${id})`}>
        <rect className={styles[bottle.liquid]} y={level(bottle.left)} width={wide} height={high} />
        <rect className={styles.wasted} y={level(bottle.wasted)} width={wide} height={high} />
      </g>
      <path className={styles.glass} d={outline} />
      <Cap width={width} mouth={mouth} opened={bottle.opened} />
      {bottle.tag && (
        <PaperTag
          text={bottle.tag}
          past={bottle.past}
          from={[(width + mouth) / 2, top * 0.7]}
          to={[width + 3, top + (bottle.form === 'powder' ? 14 : 6)]}
        />
      )}
    </svg>
  );
}

/** How much to scale a bottle so that it stands so high. */
export const scaleTo = ({ litres }: BottleSeen, height: number): number => height / (LITRE * Math.cbrt(litres));

/** Where in its picture a bottle is empty and where it is full, as parts of the picture's height from above. */
export function levelEdges(bottle: BottleSeen, scale: number): { empty: number; full: number } {
  const { height, shape } = drawn(bottle, scale);
  return { empty: (ABOVE + height - BASE) / (ABOVE + height), full: (ABOVE + shape.top) / (ABOVE + height) };
}

/** Room for the cap. */
const ABOVE = 12;

function drawn({ litres, form }: BottleSeen, scale: number): { height: number; shape: Shape } {
  const height = LITRE * scale * Math.cbrt(litres);
  return { height, shape: form === 'powder' ? jar(height) : flask(height) };
}

type Shape = { width: number; mouth: number; top: number; outline: string };

/** A bottle: neck, shoulders, body. */
function flask(height: number): Shape {
  const width = height / 2;
  const mouth = width * 0.42;
  const [left, right] = [(width - mouth) / 2, (width + mouth) / 2];
  const [neck, shoulder] = [height * 0.2, height * 0.12];
  const body = neck + 2 * shoulder;
  const [low, foot] = [height - BASE, height - 7];
  const outline = [
    path`M${left} 2 V${neck}`,
    path`C${left} ${neck + shoulder * 0.7} 2 ${neck + shoulder * 0.5} 2 ${body}`,
    path`V${foot} Q2 ${low} 7 ${low} H${width - 7} Q${width - 2} ${low} ${width - 2} ${foot} V${body}`,
    path`C${width - 2} ${neck + shoulder * 0.5} ${right} ${neck + shoulder * 0.7} ${right} ${neck} V2`,
  ].join(' ');
  return { width, mouth, top: neck * 0.6, outline };
}

/** A jar: straight sides and a wide mouth. */
function jar(height: number): Shape {
  const width = height * 0.68;
  const mouth = width * 0.82;
  const [left, right] = [(width - mouth) / 2, (width + mouth) / 2];
  const [low, foot] = [height - BASE, height - 6];
  const outline = [
    path`M${left} 2 V8 Q2 10 2 15`,
    path`V${foot} Q2 ${low} 6 ${low} H${width - 6} Q${width - 2} ${low} ${width - 2} ${foot} V15`,
    path`Q${width - 2} 10 ${right} 8 V2`,
  ].join(' ');
  return { width, mouth, top: 12, outline };
}

/** On the mouth, or off and beside it. */
function Cap({ width, mouth, opened }: { width: number; mouth: number; opened: boolean }) {
  const [left, right] = [(width - mouth) / 2, (width + mouth) / 2];
  if (!opened)
    return <rect className={styles.cap} x={pixels(left - 2)} y={-8} width={pixels(mouth + 4)} height={10} rx={1.5} />;
  const wide = Math.min(mouth * 0.9, 40);
  return (
    <rect
      className={styles.cap}
      x={pixels(right + 5)}
      y={-6}
      width={pixels(wide)}
      height={8}
      rx={1.5}
      transform={path`rotate(24 ${right} 0)`}
    />
  );
}

/** Wide enough for a month and a year. */
const TAG = { width: 64, height: 20 };

type PaperTagProps = { text: string; past: boolean; from: [number, number]; to: [number, number] };

function PaperTag({ text, past, from, to }: PaperTagProps) {
  const [x, y] = to;
  return (
    <g data-past={past || undefined}>
      <path
        className={styles.string}
        d={path`M${from[0]} ${from[1]} Q${x - 2} ${y - 8} ${x + 3} ${y + TAG.height / 2}`}
      />
      <g transform={path`translate(${x} ${y})`}>
        <path
          className={styles.paper}
          d={`M0 ${TAG.height / 2} L6 0 H${TAG.width} V${TAG.height} H6 Z`}
          strokeLinejoin="round"
        />
        <text className={styles.day} x={(TAG.width + 6) / 2} y={TAG.height / 2} dy="0.34em" textAnchor="middle">
          {text}
        </text>
        {past && <path className={styles.struck} d={`M10 ${TAG.height / 2} H${TAG.width - 4}`} />}
      </g>
    </g>
  );
}
