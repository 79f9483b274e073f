import { expect, test, vi } from 'vitest';
import { secondsToWait, tooManyChanges } from '@/lib/door/change-rate';

test('sixty changes in a minute are taken of one visitor, the next waits for that minute to end, another does not', async () => {
  vi.useFakeTimers({ now: 0 });
  for (let change = 1; change <= 60; change += 1) expect(await secondsToWait('10.0.0.1')).toBeNull();
  expect(await secondsToWait('10.0.0.1')).toBe(60);
  expect(await secondsToWait('10.0.0.2')).toBeNull();
  vi.advanceTimersByTime(45_000);
  expect(await secondsToWait('10.0.0.1')).toBe(15);
  vi.advanceTimersByTime(15_001);
  expect(await secondsToWait('10.0.0.1')).toBeNull();
  vi.useRealTimers();
});

test('who is told to wait is told how long, and that nothing was changed', () => {
  expect(tooManyChanges(1)).toContain('Wait 1 second,');
  expect(tooManyChanges(20)).toContain('Wait 20 seconds,');
  expect(tooManyChanges(20)).toContain('Nothing was changed.');
});
