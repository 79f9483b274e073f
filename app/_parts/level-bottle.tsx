'use client';

import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { BottleSeen } from '@/lib/views/bottle-seen';
import { levelAtPart, levelBySteps } from '@/shared/measure/level';
import { type Stock, stock } from '@/shared/quantity/amounts';
import { Bottle, levelEdges, scaleTo } from './bottle';
import styles from './level-bottle.module.css';

type LevelBottleProps = {
  bottle: BottleSeen;
  size: Stock;
  /** What the ledger says is in it, and what somebody sees. */
  told: Stock;
  level: Stock;
  onLevel(level: Stock): void;
  /** An amount in the shop's units. */
  shown(amount: Stock): string;
  /** The level in words, as it is read out. */
  inWords: string;
  label: string;
};

const HEIGHT = 264;

/**
 * A bottle that says how full it is by being set to what is seen: dragged by a finger, clicked, or keyed. A dashed line
 * stays where the ledger has it.
 */
export function LevelBottle({ bottle, size, told, level, onLevel, shown, inWords, label }: LevelBottleProps) {
  const picture = useRef<HTMLDivElement>(null);
  const scale = scaleTo(bottle, HEIGHT);
  const { empty, full } = levelEdges(bottle, scale);
  const heightOf = (amount: Stock) => `${(empty - (empty - full) * (amount / size)) * 100}%`;
  const drag = (event: PointerEvent) => {
    const box = picture.current?.getBoundingClientRect();
    if (!box || !event.isPrimary) return;
    const down = (event.clientY - box.top) / box.height;
    onLevel(levelAtPart((empty - down) / (empty - full), size));
  };
  return (
    <div
      ref={picture}
      className={styles.picture}
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={size}
      aria-valuenow={level}
      aria-valuetext={inWords}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        drag(event);
      }}
      onPointerMove={(event) => event.currentTarget.hasPointerCapture(event.pointerId) && drag(event)}
      onKeyDown={(event) => keyed(event, level, size, onLevel)}
    >
      <Bottle
        bottle={{ ...bottle, tag: null, left: level / size, wasted: Math.min(bottle.wasted, level / size) }}
        scale={scale}
      />
      <span className={styles.told} style={{ top: heightOf(told) }} aria-hidden="true">
        <span>ledger {shown(told)}</span>
      </span>
      <span className={styles.seen} style={{ top: heightOf(level) }} aria-hidden="true" data-moved={told !== level} />
    </div>
  );
}

/** An arrow is one step of the eye, a page ten of them. */
function keyed(event: KeyboardEvent, level: Stock, size: Stock, onLevel: (level: Stock) => void): void {
  const steps = STEPS[event.key];
  const next =
    event.key === 'Home'
      ? stock(0)
      : event.key === 'End'
        ? size
        : steps === undefined
          ? null
          : levelBySteps(level, steps, size);
  if (next === null || event.altKey || event.ctrlKey || event.metaKey) return;
  event.preventDefault();
  onLevel(next);
}

const STEPS: Record<string, number | undefined> = {
  ArrowUp: 1,
  ArrowRight: 1,
  ArrowDown: -1,
  ArrowLeft: -1,
  PageUp: 10,
  PageDown: -10,
};
