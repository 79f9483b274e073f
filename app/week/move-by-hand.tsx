'use client';

import { type DragEvent, type KeyboardEvent, type ReactNode, useRef } from 'react';
import { addDays, type Day, readDay } from '@/shared/time/day';
import { askMove, type MoveAsked } from './move-asked';

/**
 * Lets a spraying be taken from its day in the grid and put onto another, with the mouse or with Shift and an arrow. That
 * opens the form beside it with the new day and what it does; nothing is moved before the form is sent.
 */
export function MoveByHand({ today, children }: { today: Day; children: ReactNode }) {
  const held = useRef<Omit<MoveAsked, 'day'> | null>(null);
  const drag = {
    onDragStart: ({ target, dataTransfer }: DragEvent) => {
      held.current = sprayingAt(target);
      if (held.current) dataTransfer.effectAllowed = 'move';
    },
    onDragOver: (event: DragEvent) => {
      const day = dayAt(event.target);
      if (held.current && day !== null && day >= today) event.preventDefault();
    },
    onDrop: (event: DragEvent) => {
      const day = dayAt(event.target);
      if (!held.current || day === null) return;
      event.preventDefault();
      askMove({ ...held.current, day });
    },
    onDragEnd: () => {
      held.current = null;
    },
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = event.key === 'ArrowLeft' ? -1 : event.key === 'ArrowRight' ? 1 : 0;
    const [spraying, day] = [sprayingAt(event.target), readDay(dayAt(event.target) ?? '')];
    if (by === 0 || !event.shiftKey || !spraying || !day.ok) return;
    event.preventDefault();
    askMove({ ...spraying, day: addDays(day.value, by) });
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears of what happens to the links in it.
    <div {...drag} onKeyDown={onKeyDown}>
      {children}
    </div>
  );
}

function sprayingAt(target: EventTarget): Omit<MoveAsked, 'day'> | null {
  const { program, on } = closest(target, '[data-program]')?.dataset ?? {};
  return program !== undefined && on !== undefined ? { program, on } : null;
}

const dayAt = (target: EventTarget): string | null => closest(target, '[data-day]')?.dataset.day ?? null;

const closest = (target: EventTarget, selector: string): HTMLElement | null =>
  target instanceof Element ? target.closest<HTMLElement>(selector) : null;
