import { expect, test } from 'vitest';
import { overdueSprayings } from '@/lib/engine/ahead/overdue';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import type { WrittenShopFile } from '@/shared/shop-file/contract';
import { Day } from '@/shared/time/day';
import { parsedOrThrow } from '../../data/any-shop-file';

const TODAY = Day.parse('2026-03-10');

/** A program that sprays every second day from 1 March, with what is on record and what became of its turns. */
const missed = (rest: Pick<Partial<WrittenShopFile>, 'applications'>, changes: object[] = []) =>
  overdueSprayings(
    shopOfFile(
      parsedOrThrow({
        format: 'bench-and-bottle/shop@1',
        shop: { name: 'A shop', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '2 gal' },
        products: [{ id: 'p', name: 'Soap', kind: 'insecticide', form: 'liquid' }],
        benches: ['b', 'c'].map((id) => ({ id, name: id, plants: [{ name: 'Ferns', count: 12, mlPerPlant: 18 }] })),
        recipes: ['r', 's'].map((id) => ({ id, name: id, ingredients: [{ product: 'p', dose: '12 mL/gal' }] })),
        programs: [
          {
            ...{
              id: 'g',
              recipes: ['r'],
              benches: ['b', 'c'],
              startsOn: '2026-03-01',
              startTime: '17:30',
              minutes: 45,
            },
            ...{ repeat: 'FREQ=DAILY;INTERVAL=4', changes },
          },
        ],
        ...rest,
      }),
    ),
    TODAY,
  ).map(({ date }) => date);

const sprayed = (recipe: string, benches: string[], day: string) => ({
  applications: [{ id: 'a', recipe, benches, startedAt: `${day}T22:00:00Z`, endedAt: `${day}T23:00:00Z` }],
});

test('what was due in the last seven days and left nothing behind is missed', () => {
  expect(missed({})).toEqual(['2026-03-05', '2026-03-09']);
});

test('what was skipped, or moved to a day to come, is not asked about', () => {
  expect(missed({}, [{ on: '2026-03-05', kind: 'skipped', reason: 'rain' }])).toEqual(['2026-03-09']);
  expect(missed({}, [{ on: '2026-03-09', kind: 'moved', movedTo: '2026-03-11' }])).toEqual(['2026-03-05']);
});

test('a record of the same recipe on all of its benches covers it, and no other record does', () => {
  expect(missed(sprayed('r', ['b', 'c'], '2026-03-06'))).toEqual(['2026-03-09']);
  expect(missed(sprayed('r', ['b', 'c'], '2026-03-04'))).toEqual(['2026-03-05', '2026-03-09']);
  expect(missed(sprayed('r', ['b'], '2026-03-09'))).toEqual(['2026-03-05', '2026-03-09']);
  expect(missed(sprayed('s', ['b', 'c'], '2026-03-09'))).toEqual(['2026-03-05', '2026-03-09']);
});
