import { vi } from 'vitest';

/** What is written to a stream from now on, which then goes nowhere else, until the mocks are restored. */
export function captured(stream: NodeJS.WriteStream): string[] {
  const written: string[] = [];
  vi.spyOn(stream, 'write').mockImplementation((text: unknown, done?: unknown) => {
    written.push(String(text));
    if (typeof done === 'function') done();
    return true;
  });
  return written;
}

/** The faults among it, of which a line says one. */
export const faultsIn = (written: readonly string[]): { path: string; message: string }[] =>
  written
    .join('')
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line));
