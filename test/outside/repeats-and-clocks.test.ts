import { expect, test } from 'vitest';
import { planOf, shopWith, sprayingFigures } from '../worked/plan-of';

/*
 * When a program sprays, against the examples of RFC 5545, sections 3.8.5.3 and 3.3.5 (memory: the text of the standard,
 * www.rfc-editor.org/rfc/rfc5545), and the laws that change the clocks.
 */

type Program = {
  zone?: string;
  from: string;
  repeat: string | null;
  time?: string;
  minutes?: number;
  rei?: number;
  weeks?: number;
};

function sprayingsOf({
  zone = 'America/New_York',
  from,
  repeat,
  time = '09:00',
  minutes = 30,
  rei = 0,
  weeks = 60,
}: Program) {
  const plan = planOf(
    shopWith({
      shop: { timeZone: zone },
      products: [{ id: 'p1', name: 'P1', kind: 'nutrient', form: 'liquid', label: { reiHours: rei } }],
      benches: [{ id: 'b1', name: 'Bench', plants: [{ name: 'plant', count: 1, mlPerPlant: 10 }] }],
      recipes: [{ id: 'r1', name: 'Recipe', ingredients: [{ product: 'p1', dose: '1 mL/L' }] }],
      programs: [{ id: 'g1', recipes: ['r1'], benches: ['b1'], startsOn: from, repeat, startTime: time, minutes }],
    }),
    from,
    weeks,
  );
  return sprayingFigures(plan);
}

/** "Sep 2,9,16" of a year and the next ones, as the standard lists them. */
const days = (listed: string): string[] =>
  listed.split(' ').flatMap((part) => {
    const [month = '', numbers = ''] = part.split(':');
    return numbers.split(',').map((day) => `${month}-${day.padStart(2, '0')}`);
  });

test.each([
  {
    what: 'daily for 10 occurrences',
    from: '1997-09-02',
    repeat: 'FREQ=DAILY;COUNT=10',
    on: '1997-09:2,3,4,5,6,7,8,9,10,11',
  },
  {
    what: 'every 10 days, 5 occurrences',
    from: '1997-09-02',
    repeat: 'FREQ=DAILY;INTERVAL=10;COUNT=5',
    on: '1997-09:2,12,22 1997-10:2,12',
  },
  {
    what: 'weekly for 10 occurrences',
    from: '1997-09-02',
    repeat: 'FREQ=WEEKLY;COUNT=10',
    on: '1997-09:2,9,16,23,30 1997-10:7,14,21,28 1997-11:4',
  },
  {
    what: 'weekly on Tuesday and Thursday',
    from: '1997-09-02',
    repeat: 'FREQ=WEEKLY;COUNT=10;BYDAY=TU,TH',
    on: '1997-09:2,4,9,11,16,18,23,25,30 1997-10:2',
  },
  {
    what: 'every other week on Tuesday and Thursday',
    from: '1997-09-02',
    repeat: 'FREQ=WEEKLY;INTERVAL=2;COUNT=8;BYDAY=TU,TH',
    on: '1997-09:2,4,16,18,30 1997-10:2,14,16',
  },
  {
    what: 'weeks that begin on Monday',
    from: '1997-08-05',
    repeat: 'FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU',
    on: '1997-08:5,10,19,24',
  },
  {
    what: 'the first Friday of the month',
    from: '1997-09-05',
    repeat: 'FREQ=MONTHLY;COUNT=10;BYDAY=1FR',
    on: '1997-09:5 1997-10:3 1997-11:7 1997-12:5 1998-01:2 1998-02:6 1998-03:6 1998-04:3 1998-05:1 1998-06:5',
  },
  {
    what: 'the first and last Sunday, every other month',
    from: '1997-09-07',
    repeat: 'FREQ=MONTHLY;INTERVAL=2;COUNT=10;BYDAY=1SU,-1SU',
    on: '1997-09:7,28 1997-11:2,30 1998-01:4,25 1998-03:1,29 1998-05:3,31',
  },
  {
    what: 'the second to last Monday',
    from: '1997-09-22',
    repeat: 'FREQ=MONTHLY;COUNT=6;BYDAY=-2MO',
    on: '1997-09:22 1997-10:20 1997-11:17 1997-12:22 1998-01:19 1998-02:16',
  },
  {
    what: 'the third to the last day',
    from: '1997-09-28',
    repeat: 'FREQ=MONTHLY;COUNT=6;BYMONTHDAY=-3',
    on: '1997-09:28 1997-10:29 1997-11:28 1997-12:29 1998-01:29 1998-02:26',
  },
  {
    what: 'the 2nd and 15th',
    from: '1997-09-02',
    repeat: 'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=2,15',
    on: '1997-09:2,15 1997-10:2,15 1997-11:2,15 1997-12:2,15 1998-01:2,15',
  },
  {
    what: 'the first and last day',
    from: '1997-09-30',
    repeat: 'FREQ=MONTHLY;COUNT=10;BYMONTHDAY=1,-1',
    on: '1997-09:30 1997-10:1,31 1997-11:1,30 1997-12:1,31 1998-01:1,31 1998-02:1',
  },
  {
    what: 'the first Saturday after the first Sunday',
    from: '1997-09-13',
    repeat: 'FREQ=MONTHLY;COUNT=10;BYDAY=SA;BYMONTHDAY=7,8,9,10,11,12,13',
    on: '1997-09:13 1997-10:11 1997-11:8 1997-12:13 1998-01:10 1998-02:7 1998-03:7 1998-04:11 1998-05:9 1998-06:13',
  },
  {
    what: 'every Tuesday, every other month',
    from: '1997-09-02',
    repeat: 'FREQ=MONTHLY;INTERVAL=2;COUNT=18;BYDAY=TU',
    on: '1997-09:2,9,16,23,30 1997-11:4,11,18,25 1998-01:6,13,20,27 1998-03:3,10,17,24,31',
  },
  {
    what: 'a day that February does not have',
    from: '2007-01-15',
    repeat: 'FREQ=MONTHLY;BYMONTHDAY=15,30;COUNT=5',
    on: '2007-01:15,30 2007-02:15 2007-03:15,30',
  },
])('RFC 5545: $what', ({ from, repeat, on }) => {
  expect(sprayingsOf({ from, repeat }).map(({ date }) => date)).toEqual(days(on));
});

test('RFC 5545: Friday the 13th comes on 13 February, March and November 1998', () => {
  const found = sprayingsOf({ from: '1997-09-02', repeat: 'FREQ=MONTHLY;BYDAY=FR;BYMONTHDAY=13', weeks: 104 });
  expect(found.map(({ date }) => date)).toEqual(
    ['1998-02-13', '1998-03-13', '1998-11-13', '1999-08-13'].slice(0, found.length),
  );
  expect(found.length).toBeGreaterThanOrEqual(3);
});

test('RFC 5545, 3.3.5: 02:30 on 11 March 2007 in New York does not exist and is 03:30 EDT', () => {
  const [first] = sprayingsOf({ from: '2007-03-11', repeat: null, time: '02:30' });
  expect(first?.startsAt).toBe('2007-03-11T03:30:00-04:00');
});

test('RFC 5545, 3.3.5: 01:30 on 4 November 2007 in New York comes twice and means the first, EDT', () => {
  const [first] = sprayingsOf({ from: '2007-11-04', repeat: null, time: '01:30' });
  expect(first?.startsAt).toBe('2007-11-04T01:30:00-04:00');
});

/*
 * 15 U.S.C. 260a: from 02:00 on the second Sunday of March to 02:00 on the first of November; Directive 2000/84/EC: from
 * 01:00 UTC on the last Sunday of March to 01:00 UTC on the last of October (memory). An interval counts elapsed hours.
 */
test.each([
  {
    zone: 'America/New_York',
    from: '2026-03-07',
    starts: '2026-03-07T22:00:00-05:00',
    reopens: '2026-03-08T23:00:00-04:00',
  },
  {
    zone: 'America/New_York',
    from: '2026-10-31',
    starts: '2026-10-31T22:00:00-04:00',
    reopens: '2026-11-01T21:00:00-05:00',
  },
  {
    zone: 'Europe/Berlin',
    from: '2026-03-28',
    starts: '2026-03-28T22:00:00+01:00',
    reopens: '2026-03-29T23:00:00+02:00',
  },
  {
    zone: 'Europe/Berlin',
    from: '2026-10-24',
    starts: '2026-10-24T22:00:00+02:00',
    reopens: '2026-10-25T21:00:00+01:00',
  },
])('24 h from 22:00 in $zone on $from end at $reopens', ({ zone, from, starts, reopens }) => {
  const [first] = sprayingsOf({ zone, from, repeat: null, time: '22:00', minutes: 0, rei: 24 });
  expect([first?.startsAt, first?.reopensAt]).toEqual([starts, reopens]);
});
