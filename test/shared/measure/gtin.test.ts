import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkDigit, isSameGtin, readGtin } from '@/shared/measure/gtin';

test('a bar code number is read with its check digit, in any of its lengths', () => {
  for (const text of ['2000000000015', '2 000000 000015', '20000004', '200000000004', '12000000000012']) {
    const reading = readGtin(text);
    expect(reading.ok && text.replace(/ /g, '')).toBe(reading.ok && reading.value);
  }
});

test('one wrong digit is always seen, and the sentence says what the last one would be', () => {
  const digits = fc.stringMatching(/^\d{12}$/);
  fc.assert(
    fc.property(digits, fc.nat(11), fc.integer({ min: 1, max: 9 }), (others, place, more) => {
      const right = others + checkDigit(others);
      expect(readGtin(right)).toEqual({ ok: true, value: right });
      const wrong = [...right]
        .map((digit, at) => (at === place ? String((Number(digit) + more) % 10) : digit))
        .join('');
      expect(readGtin(wrong)).toMatchObject({ ok: false });
    }),
    { numRuns: 1000 },
  );
  expect(readGtin('2000000000016')).toMatchObject({ message: expect.stringContaining('the last one would be 5') });
});

test('what is no bar code number is refused, and zeros in front change nothing', () => {
  for (const text of ['', '123', '20000000000a5', '123456789']) expect(readGtin(text).ok).toBe(false);
  expect(isSameGtin('200000000004', '0200000000004')).toBe(true);
});
