import { expect, test } from 'vitest';
import { readClockTime, readClosingTime, showClockTime } from '@/shared/time/clock-time';

test('every minute of the day is read as it is written', () => {
  for (let minute = 0; minute < 1_440; minute++) {
    expect(readClockTime(showClockTime(minute))).toEqual({ ok: true, value: minute });
    expect(readClosingTime(showClockTime(minute))).toEqual({ ok: true, value: minute });
  }
});

test('half past five in the afternoon is minute 1,050', () => {
  expect(readClockTime('17:30')).toEqual({ ok: true, value: 1_050 });
  expect(showClockTime(1_050)).toBe('17:30');
  expect(showClockTime(5)).toBe('00:05');
});

test('a shop may close at 24:00, but nothing starts then', () => {
  expect(readClosingTime('24:00')).toEqual({ ok: true, value: 1_440 });
  expect(showClockTime(1_440)).toBe('24:00');
  expect(readClockTime('24:00')).toEqual({
    ok: false,
    message: '"24:00" is not a time. Write hours and minutes from 00:00 to 23:59, such as 17:30.',
  });
});

test.each(['', '9:00', '17.30', '17:60', '24:01', '25:00', '17:30:00', ' 17:30', '17:30\n', '5:30 pm', '-1:00'])(
  '%j is refused as a time, with what to write instead',
  (text) => {
    expect(readClockTime(text)).toEqual({
      ok: false,
      message: `"${text}" is not a time. Write hours and minutes from 00:00 to 23:59, such as 17:30.`,
    });
    expect(readClosingTime(text)).toEqual({
      ok: false,
      message: `"${text}" is not a time. Write hours and minutes from 00:00 to 24:00, such as 18:00.`,
    });
  },
);
