import { expect, test } from 'vitest';
import { fold } from '@/shared/text/fold';

test.each([
  ['Potassium  Silicate ', 'potassium silicate'],
  ['Café', 'cafe'],
  ['CAFÉ', 'cafe'],
  ['Straße', 'strasse'],
  ['½ strength', '1⁄2 strength'],
  ['Bt ﬂuid', 'bt fluid'],
  ['Œuf Ørsted', 'oeuf orsted'],
])('"%s" is looked for as "%s"', (typed, folded) => {
  expect(fold(typed)).toBe(folded);
});
