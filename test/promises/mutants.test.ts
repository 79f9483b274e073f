import { expect, test } from 'vitest';
import { mutantFates } from '../faults/mutants/mutant-run';
import { isLong } from '../runs';
import { figure } from './figure';

test.runIf(isLong)(
  'nine of ten mutants of the board, the ledger and the record are noticed, and all of the board',
  { timeout: 4 * 3_600_000 },
  async () => {
    const fates = await mutantFates(() => {});
    const noticed = fates.filter(({ by }) => by !== null);
    const board = fates.filter(({ isBoard }) => isBoard);
    const missed = board.filter(({ by }) => by === null);
    figure(
      40,
      `${noticed.length} of ${fates.length} noticed, ${board.length - missed.length} of ${board.length} in the board`,
    );
    expect(missed.map(({ file, line, was, becomes }) => `${file}:${line} ${was} → ${becomes}`)).toEqual([]);
    expect(noticed.length / fates.length).toBeGreaterThanOrEqual(0.9);
  },
);
