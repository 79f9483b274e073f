import fc from 'fast-check';
import { expect, test } from 'vitest';
import { PageAsked, pageOf } from '@/lib/views/pages';

const weights = fc.array(fc.integer({ min: 1, max: 30 }), { maxLength: 40 });
const itself = (one: number) => one;

test('the pages together are the list, and none is heavier than it may be but for one thing alone', () => {
  fc.assert(
    fc.property(weights, (list) => {
      const { pages } = pageOf(list, '', 20, itself);
      const each = Array.from({ length: pages }, (_, at) => pageOf(list, String(at + 1), 20, itself));
      expect(each.flatMap(({ shown }) => shown)).toEqual(list);
      for (const { shown } of each) {
        expect(shown.length <= 1 || shown.reduce((sum, one) => sum + one, 0) <= 20).toBe(true);
      }
      expect(pageOf(list, 'all', 20, itself)).toMatchObject({ shown: list, isAll: true, pages });
      expect(pageOf(list, '999', 20, itself).shown).toEqual(each.at(-1)?.shown);
    }),
  );
});

test('what is no page is the first', () => {
  for (const text of ['', '0', '-1', '1.5', 'ALL', '12345', undefined]) {
    expect(pageOf([1, 2], PageAsked.parse(text), 1, itself)).toMatchObject({ page: 1, shown: [1] });
  }
});
