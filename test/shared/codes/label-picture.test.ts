import jsQR from 'jsqr';
import QRCode from 'qrcode';
import { expect, test } from 'vitest';
import { bottleCode } from '@/shared/codes/bottle-code';
import { codeMeaning } from '@/shared/codes/code-meaning';

const NAMED = { lotId: 'spinosad-b~2', number: 3 };

/** A label as a camera sees it: square, turned by an angle, in the middle of a larger picture, each pixel black or white. */
function pictureOf(text: string, degrees: number, side = 320) {
  const { size, data } = QRCode.create(text, { errorCorrectionLevel: 'M' }).modules;
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const scale = (side * 0.55) / size;
  for (let y = 0; y < side; y++) {
    for (let x = 0; x < side; x++) {
      const [fromX, fromY] = [x - side / 2, y - side / 2];
      const column = Math.floor((fromX * cos + fromY * sin) / scale + size / 2);
      const row = Math.floor((fromY * cos - fromX * sin) / scale + size / 2);
      const isInside = column >= 0 && row >= 0 && column < size && row < size;
      if (isInside && data[row * size + column]) pixels.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
    }
  }
  return { pixels, side };
}

/** The same in poor light: grey, with grain, always the same grain. */
function inPoorLight({ pixels, side }: ReturnType<typeof pictureOf>) {
  let seed = 7;
  const grain = () => {
    seed = (seed * 1_103_515_245 + 12_345) % 2 ** 31;
    return (seed / 2 ** 31 - 0.5) * 50;
  };
  return { pixels: pixels.map((value, at) => (at % 4 === 3 ? 255 : value * 0.5 + 50 + grain())), side };
}

const seen = ({ pixels, side }: ReturnType<typeof pictureOf>) => jsQR(pixels, side, side)?.data;

test.each([0, 17, 45, 90, 180, 263])('a label that is held turned by %i degrees opens its bottle', (degrees) => {
  const text = seen(pictureOf(bottleCode(NAMED), degrees)) ?? '';
  expect(codeMeaning(text)).toEqual({ kind: 'bottle', bottle: NAMED });
});

test('a label in poor light, on a grainy picture, opens its bottle', () => {
  const text = seen(inPoorLight(pictureOf(bottleCode(NAMED), 8))) ?? '';
  expect(codeMeaning(text)).toEqual({ kind: 'bottle', bottle: NAMED });
});

test('a label with a drop of syrup on it still opens its bottle', () => {
  const smeared = pictureOf(bottleCode(NAMED), 0);
  for (let y = 150; y < 178; y++) smeared.pixels.fill(255, (y * smeared.side + 150) * 4, (y * smeared.side + 178) * 4);
  expect(codeMeaning(seen(smeared) ?? '')).toEqual({ kind: 'bottle', bottle: NAMED });
});

test('a picture without a label says nothing', () => {
  expect(seen({ pixels: new Uint8ClampedArray(64 * 64 * 4).fill(255), side: 64 })).toBeUndefined();
});
