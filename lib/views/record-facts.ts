import { showWarmth } from '@/shared/forms/celsius';
import { showMinutes, showNumber, showVolume, type Units } from '@/shared/measure/show';
import { type Instant, instantOf } from '@/shared/time/instant';
import { IN_ANY_YEAR, showClock, showDayLong, showInstant, showUntil } from '@/shared/time/show-day';
import { dayOf, type Zone } from '@/shared/time/zone';
import type { RecordVersion } from '../data/record-versions';
import { longestRecorded } from '../engine/keepout/reopening';
import { nameIn } from '../engine/name-in';
import { pouredText } from './mix-pours';
import type { RecordBook } from './record-book';

/** One thing that a record says: what it is called, and what it says; null when nobody noted it. */
export type Fact = { name: string; value: string | null };

/** What went in, as people read it. */
export type ProductFact = {
  id: string;
  name: string;
  registration: string | null;
  actives: string | null;
  dose: string;
  amount: string | null;
  interval: string | null;
};

/** A moment with its weekday, date and year. */
export const inAnyYear = (instant: Instant, zone: Zone): string => showInstant(instant, zone, IN_ANY_YEAR);

/** From when until when: "Tue 3 March 2026 18:15 to 19:00". */
export function spanText({ startedAt, endedAt }: Pick<RecordVersion, 'startedAt' | 'endedAt'>, zone: Zone): string {
  const until = endedAt === null ? 'no end noted' : `to ${showUntil(endedAt, zone, dayOf(zone, startedAt))}`;
  return `${inAnyYear(startedAt, zone)} ${until}`;
}

/** What a version of a record says beside what went in, the fields that must be kept first. */
export function factsOf({ shop }: Pick<RecordBook, 'shop'>, version: RecordVersion): Fact[] {
  const { details, startedAt, endedAt, benches } = version;
  const { zone, units } = shop;
  const day = dayOf(zone, startedAt);
  return [
    { name: 'Crop or site treated', value: details.crop },
    { name: 'Location', value: details.location },
    { name: 'Benches', value: benches.map((id) => nameIn(shop.benches, id)).join(', ') },
    { name: 'Date', value: showDayLong(day, IN_ANY_YEAR) },
    { name: 'Started', value: showClock(startedAt, zone) },
    { name: 'Ended', value: endedAt === null ? null : showUntil(endedAt, zone, day) },
    { name: 'Restricted-entry interval', value: intervalText(version) },
    { name: 'Applicator', value: details.by },
    { name: 'Recipe', value: version.recipeName },
    ...sprayFacts(version, zone, units),
  ];
}

function sprayFacts({ details, startedAt }: RecordVersion, zone: Zone, units: Units): Fact[] {
  const { mixedAt, sprayed, leftover, leftoverWent, plants, conditions, temperatureC, pH, withdrawn } = details;
  const left = leftover === null ? null : showVolume(leftover, units);
  const noted: Fact[] = [
    { name: 'Mixed', value: mixedAt === null ? null : showClock(instantOf(mixedAt), zone, dayOf(zone, startedAt)) },
    { name: 'Spray mixed', value: sprayed === null ? null : showVolume(sprayed, units) },
    { name: 'Left over', value: left && (leftoverWent === null ? left : `${left}: ${leftoverWent}`) },
    { name: 'Which plants', value: plants },
    { name: 'Conditions', value: conditions },
    { name: 'Temperature', value: temperatureC === null ? null : showWarmth(temperatureC, units) },
    { name: 'pH', value: pH === null ? null : showNumber(pH) },
    { name: 'Withdrawn', value: withdrawn ? 'entered in error' : null },
  ];
  return noted.filter(({ value }) => value !== null);
}

/** The longest interval in the mix; null as soon as one is unknown. */
function intervalText({ products }: RecordVersion): string | null {
  const longest = longestRecorded(products.map(({ reiMinutes }) => reiMinutes));
  return longest === null ? null : `${showMinutes(longest)} from the end, the longest in it`;
}

/** What went in, with what the label said of it then. */
export const productFacts = ({ shop }: Pick<RecordBook, 'shop'>, { products }: RecordVersion): ProductFact[] =>
  products.map(({ product: id, name, registration, actives, dose, amount, reiMinutes }) => {
    const today = shop.products.find((one) => one.id === id);
    return {
      ...{ id, name: name ?? today?.name ?? id, registration, actives, dose },
      amount: amount === null ? null : pouredText(amount, { form: today?.form ?? 'liquid' }),
      interval: reiMinutes === null ? null : showMinutes(reiMinutes),
    };
  });

/** What of two versions differs, by name. */
export function differing(book: Pick<RecordBook, 'shop'>, was: RecordVersion, is: RecordVersion) {
  const before = new Map(told(book, was).map(({ name, value }) => [name, value]));
  const after = new Map(told(book, is).map(({ name, value }) => [name, value]));
  const names = [...new Set([...before.keys(), ...after.keys()])];
  return names.flatMap((name) => {
    const [from, to] = [before.get(name) ?? null, after.get(name) ?? null];
    return from === to ? [] : [{ name, from, to }];
  });
}

const told = (book: Pick<RecordBook, 'shop'>, version: RecordVersion): Fact[] => [
  ...factsOf(book, version),
  ...productFacts(book, version).map(({ name, registration, actives, dose, amount, interval }) => ({
    name,
    value: [amount ?? 'amount not noted', dose, registration, actives, interval].filter(Boolean).join(', '),
  })),
];
