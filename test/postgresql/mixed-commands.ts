import { clockPinnedTo } from '@/lib/clock';

/** A clock that stands still, late on a spring morning. */
export const CLOCK = clockPinnedTo('2026-03-31T09:00:00Z');

/** A command as it is sent to a process, whichever it is. */
export type Asked = { kind: 'draw' | 'change' | 'spray'; commandId: string; shopId: string };

/** What a process answers. */
export type Answered = { commandId: string; outcome: { ok: boolean; thrown?: string; refusal?: { code: string } } };
