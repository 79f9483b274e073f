import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { boardHtml, noBoardHtml } from '@/app/board/[token]/board-html';
import type { Board, BoardBench } from '@/lib/views/keep-out-board';
import { instantOf } from '@/shared/time/instant';

type Said = Pick<BoardBench, 'state' | 'word' | 'when' | 'left'>;

const UNKNOWN: Said = { state: 'unknown', word: 'KEEP OUT (not known)', when: null, left: null };

const STATES: Said[] = [
  { state: 'closed', word: 'KEEP OUT', when: 'until Tue 31 March 16:30', left: '11 h 30 min left' },
  UNKNOWN,
  { state: 'open', word: 'Interval elapsed', when: 'Tue 31 March 16:30, as recorded', left: null },
];

function board(count: number, more: Partial<Board> = {}): Board {
  const benches = Array.from({ length: count }, (_, at) => ({
    ...{ id: `b${at}`, anchor: `bench-b${at}`, name: `Bench of house ${at}, by the north door` },
    ...(STATES[at % STATES.length] ?? UNKNOWN),
    ...{ because: [], ways: [], working: null },
  }));
  const now = instantOf(Date.parse('2026-03-31T09:00:00Z'));
  return {
    shop: 'A shop',
    now,
    asOf: 'Tue 31 March 2026 05:00',
    zone: 'America/New_York',
    doubt: null,
    benches,
    ...more,
  };
}

const page = (of: Board) => boardHtml(of, { nonce: 'n', until: '05:01:00' });

test('the page of a link weighs under 10 kB: whole for 20 benches, and on the wire for 200', () => {
  expect(Buffer.byteLength(page(board(20)))).toBeLessThan(10_000);
  expect(gzipSync(page(board(200))).length).toBeLessThan(10_000);
});

test('it says every bench with its state, until when it counts, and nothing that a name could run', () => {
  const html = page(board(3, { shop: '<script>alert(1)</script>', doubt: 'clock' }));
  expect(html).toContain('Counts until <b>05:01:00</b>');
  expect(html.match(/data-state="(closed|unknown|open)"/g)).toHaveLength(3);
  expect(html).toContain('The clock of the shop’s computer is in doubt');
  expect(html).not.toContain('<script>alert');
  expect(html).not.toMatch(/\bsafe\b/i);
  expect(html.match(/<script[^>]*>/g)).toEqual(['<script nonce="n">']);
  expect(noBoardHtml({ nonce: 'n' })).toMatch(/KEEP OUT \(not known\)/);
});
