import fc from 'fast-check';
import { expect, test } from 'vitest';
import { idFromName } from '@/shared/shop-file/id-from-name';

test.each([
  ['Light oil, 98 %', 'light-oil-98'],
  ['  Crème “Ⅱ” ', 'creme-ii'],
  ['%%%', 'new-one'],
  ['Soap', 'soap-3'],
  ['New', 'new-2'],
  ['石鹸', '石鹸'],
])('%s becomes an id', (name, id) => {
  expect(idFromName(name, ['soap', 'soap-2'], ['new'])).toBe(id);
});

test('an id is never taken, never a page, never too long, and names nothing but itself in an address', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 90 }), fc.nat(12), (name, others) => {
      const taken: string[] = [];
      for (let count = 0; count <= others; count += 1) {
        const id = idFromName(name, taken, ['new', 'a']);
        expect(id).toMatch(/^[\p{L}\p{N}]+(-[\p{L}\p{N}]+)*$/u);
        expect(id.length).toBeLessThanOrEqual(64);
        expect([...taken, 'new', 'a']).not.toContain(id);
        taken.push(id);
      }
    }),
  );
});
