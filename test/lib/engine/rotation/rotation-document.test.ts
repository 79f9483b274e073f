import { expect, test } from 'vitest';
import { rotationDocument } from '@/lib/engine/rotation/rotation-document';
import { application, bench, once, planOf, product, recipe } from '../rules/small-shop';

const fungicide = (id: string, substance: string, modes: string[]) =>
  product(id, { modes }, { kind: 'fungicide', contents: [{ substance, amount: 50, basis: '% w/w' }] });

const plan = planOf(
  {
    settings: { sameModeInARow: 1 },
    products: [
      fungicide('p1', 'boscalid', ['FRAC 7']),
      fungicide('p2', 'captan', ['FRAC M4']),
      fungicide('p3', 'myclobutanil', []),
      fungicide('p4', 'potassium bicarbonate', []),
    ],
    benches: [bench('b1'), bench('b2')],
    recipes: [recipe('r1', 'p1'), recipe('r2', 'p2'), recipe('r3', 'p3')],
    programs: [
      once('g1', '2026-03-03', { recipes: ['r1', 'r2'], repeat: 'FREQ=DAILY;COUNT=2' }),
      once('g2', '2026-03-05', { recipes: ['r3'] }),
    ],
    applications: [application('a1', '2026-03-01T18:00:00Z', '2026-03-01T18:30:00Z')],
  },
  '2026-03-02',
  1,
);

test('each bench shows what it has had and will have, each group with how often in a row', () => {
  const over = { group: 'FRAC 7', countsAs: 'FRAC 7', inARow: 2, isOver: true };
  expect(rotationDocument(plan).benches).toEqual([
    {
      bench: 'b1',
      turns: [
        {
          on: '2026-03-01',
          recipe: 'r1',
          program: null,
          modes: [{ group: 'FRAC 7', countsAs: 'FRAC 7', inARow: 1, isOver: false }],
        },
        { on: '2026-03-03', recipe: 'r1', program: 'g1', modes: [over] },
        {
          on: '2026-03-04',
          recipe: 'r2',
          program: 'g1',
          modes: [{ group: 'FRAC M04', countsAs: null, inARow: 1, isOver: false }],
        },
        { on: '2026-03-05', recipe: 'r3', program: 'g2', modes: [] },
      ],
    },
    { bench: 'b2', turns: [] },
  ]);
});

test('each program with groups has its order, and the words for it', () => {
  expect(rotationDocument(plan).programs).toEqual([
    {
      program: 'g1',
      recipes: ['r1', 'r2'],
      proposed: ['r2', 'r1'],
      ...{ isAsNow: false, repeatsNow: 1, repeats: 0, proven: true },
      message:
        'Sprayed in the order Recipe r2 and Recipe r1, every mode of action keeps to 1 in a row; as it is, one comes too often 1 time. Look at the other flags again once it is changed.',
    },
  ]);
});

test('a product with a published group and none entered is named; one that no group is published for is not', () => {
  expect(rotationDocument(plan).notEntered).toEqual([{ product: 'p3', published: ['FRAC 3'] }]);
});

test('what is multi-site is shown, and never as a repetition', () => {
  const repeated = planOf({
    products: [fungicide('p1', 'captan', ['frac m4'])],
    programs: [once('g1', '2026-03-03', { repeat: 'FREQ=DAILY;COUNT=2' })],
  });
  const shown = { group: 'FRAC M04', countsAs: null, inARow: 1, isOver: false };
  const { benches, programs } = rotationDocument(repeated);
  expect(benches.map(({ turns }) => turns.map(({ modes }) => modes))).toEqual([[[shown], [shown]]]);
  expect(programs).toEqual([]);
});
