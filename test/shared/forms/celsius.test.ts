import { expect, test } from 'vitest';
import { readCelsius } from '@/shared/forms/celsius';

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
