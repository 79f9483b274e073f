import { expect, test } from 'vitest';
import { celsiusTyped, readCelsius, showWarmth } from '@/shared/forms/celsius';

test.each([
  ['', null],
  ['18.5', 18.5],
  [' -3 ', -3],
  ['−3 °C', -3],
  ['27c', 27],
  ['65 °F', 18.3],
  ['86 F', 30],
  ['86.1f', 30.1],
  ['-40 F', -40],
  ['-60', -60],
  ['70', 70],
  ['158 F', 70],
])('"%s" is %s °C', (text, celsius) => {
  expect(readCelsius(text)).toEqual({ ok: true, value: celsius });
});

test.each(['warm', '-', 'F', '18,5', '70.1', '-60.1', '95', '159 F', '18 to 20', '1e999'])(
  '"%s" is refused',
  (text) => {
    expect(readCelsius(text)).toMatchObject({
      ok: false,
      message: expect.stringContaining('Write degrees Celsius, such as 18.5'),
    });
  },
);

test('in a shop with US units a number without a letter is in °F, and is shown so', () => {
  expect(readCelsius('65', 'us')).toEqual({ ok: true, value: 18.3 });
  expect(readCelsius('18.5 C', 'us')).toEqual({ ok: true, value: 18.5 });
  expect(readCelsius('95', 'us')).toEqual({ ok: true, value: 35 });
  expect(readCelsius('warm', 'us')).toMatchObject({ message: expect.stringContaining('Fahrenheit, such as 65') });
  expect(showWarmth(18.3, 'us')).toBe('65 °F (18.3 °C)');
  expect(showWarmth(18.3, 'metric')).toBe('18.3 °C');
});

test('what a field shows reads back as what was kept', () => {
  for (let tenths = -590; tenths <= 690; tenths += 1) {
    for (const units of ['us', 'metric'] as const) {
      expect(readCelsius(celsiusTyped(tenths / 10, units), units)).toEqual({ ok: true, value: tenths / 10 });
    }
  }
});
