import type { Written } from '@/shared/shop-file/contract';
import { addDays, type Day, weekdayOf } from '@/shared/time/day';
import { FOLIAR } from './label';

type Recipe = Written<'recipes'>;
type Program = Written<'programs'>;

const into = (product: string, dose: string) => ({ product, dose, use: FOLIAR });

/** Five recipe cards. The last one is old, and shows it. */
export const RECIPES: Recipe[] = [
  {
    id: 'calcium-feed',
    name: 'Calcium feed',
    targetPh: null,
    useWithinHours: 24,
    ingredients: [
      into('calcium-5', '4 mL/L'),
      into('iron-chelate-6', '1/8 tsp/gal'),
      into('seaweed-extract', '1 tsp/gal'),
      into('spreader-80', '6 drops/gal'),
    ],
  },
  {
    id: 'oil-and-bicarbonate',
    name: 'Oil, silicate and bicarbonate',
    targetPh: null,
    useWithinHours: 6,
    ingredients: [into('silicate-8', '4 mL/L'), into('bicarbonate', '2.5 g/L'), into('light-oil-98', '0.75 %')],
  },
  {
    id: 'thrips-turn',
    name: 'Thrips turn',
    targetPh: 5.6,
    useWithinHours: 12,
    ingredients: [
      into('spinosad-half', '60 ppm spinosad'),
      into('spreader-80', '6 drops/gal'),
      into('citric-acid', '0.2 g/L'),
    ],
  },
  {
    id: 'neem-and-soap',
    name: 'Neem and soap',
    targetPh: null,
    useWithinHours: 8,
    ingredients: [into('soap-49', '1 %'), into('neem-extract', '2 mL/L')],
  },
  {
    id: 'yard-wash',
    name: 'Yard wash (old card)',
    targetPh: null,
    useWithinHours: 0.5,
    ingredients: [
      into('light-oil-80', '3 %'),
      into('wettable-sulfur', '1 tbsp/gal'),
      into('copper-soap', '0.3 fl oz/gal'),
    ],
  },
];

/**
 * Six programs that began at different times in the past year. Two of them fall due on the day of loading; the rotation
 * was last sprayed the evening before; the mildew round of the propagation tent follows the rotation by a night.
 */
export const programsFrom = (today: Day): Program[] => [...indoors(today), ...forAWhile(today), outdoors(today)];

function indoors(today: Day): Program[] {
  return [
    {
      id: 'weekly-feed',
      recipes: ['calcium-feed'],
      benches: ['fern-wall', 'orchid-bench'],
      startsOn: addDays(today, -364),
      endsOn: null,
      repeat: `FREQ=WEEKLY;BYDAY=${weekdayOf(today).slice(0, 2).toUpperCase()}`,
      startTime: '20:15',
      minutes: 35,
    },
    {
      id: 'herb-rotation',
      recipes: ['thrips-turn', 'neem-and-soap', 'oil-and-bicarbonate'],
      benches: ['herb-trays', 'propagation-tent'],
      startsOn: addDays(today, -351),
      endsOn: null,
      repeat: 'FREQ=DAILY;INTERVAL=14',
      startTime: '19:00',
      minutes: 45,
    },
    {
      id: 'mildew-round',
      recipes: ['oil-and-bicarbonate'],
      benches: ['propagation-tent', 'succulent-shelf'],
      startsOn: addDays(today, -98),
      endsOn: null,
      repeat: 'FREQ=DAILY;INTERVAL=28',
      startTime: '06:30',
      minutes: 40,
      changes: [
        moved(today, { by: 70, to: 63, reason: 'The label asks for more days between.' }),
        moved(today, { by: 42, to: 40, reason: 'The tent was closed.' }),
      ],
    },
  ];
}

/** A turn of so many days ago, moved to another day. */
const moved = (today: Day, { by, to, reason }: { by: number; to: number; reason: string }) =>
  ({ on: addDays(today, -by), kind: 'moved', movedTo: addDays(today, -to), reason }) as const;

/** Programs with an end: a season, and a pest. */
function forAWhile(today: Day): Program[] {
  return [
    {
      id: 'citrus-round',
      recipes: ['oil-and-bicarbonate'],
      benches: ['citrus-house', 'front-table'],
      startsOn: addDays(today, -150),
      endsOn: addDays(today, 105),
      repeat: 'FREQ=DAILY;INTERVAL=10',
      startTime: '18:30',
      minutes: 50,
    },
    {
      id: 'orchid-thrips',
      recipes: ['thrips-turn'],
      benches: ['orchid-bench'],
      startsOn: addDays(today, -24),
      endsOn: addDays(today, 50),
      repeat: 'FREQ=DAILY;INTERVAL=14',
      startTime: '19:00',
      minutes: 20,
    },
  ];
}

function outdoors(today: Day): Program {
  return {
    id: 'yard-monthly',
    recipes: ['yard-wash'],
    benches: ['yard'],
    startsOn: yardDaysBefore(today).at(-1) ?? today,
    endsOn: null,
    repeat: `FREQ=MONTHLY;BYMONTHDAY=${yardDayOfMonth(today)}`,
    startTime: '07:00',
    minutes: 45,
  };
}

/** The yard is due the day after tomorrow, or on the 28th where that day is missing from some months. */
const yardDayOfMonth = (today: Day): number => Math.min(28, dayOfMonth(addDays(today, 2)));

const dayOfMonth = (day: Day): number => Number(day.slice(8));

/** The last two days before today on which the yard was due, the latest first. Two months have at most 62 days. */
export function yardDaysBefore(today: Day): Day[] {
  const due = yardDayOfMonth(today);
  const before = Array.from({ length: 62 }, (_, back) => addDays(today, -1 - back));
  return before.filter((day) => dayOfMonth(day) === due).slice(0, 2);
}
