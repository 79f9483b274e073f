import { z } from 'zod';
import { WEEKDAYS } from '../time/day';
import {
  clockTime,
  closingTime,
  count,
  currency,
  day,
  instead,
  listOf,
  maybe,
  money,
  name,
  number,
  oneOf,
  section,
  sectionOf,
  setting,
  size,
  volume,
  words,
  zone,
} from './fields';

/*
 * The part of the shop file that is about the shop itself: where it is, when it is open, its water and its tools.
 */

export const weekday = () => oneOf(...WEEKDAYS);
export const pH = () => number(0, 14, 'Write a pH from 0 to 14.');

/** The longest that anything is waited for, in days. */
export const LONGEST_WAIT = 366;

const opening = () =>
  z
    .tuple([clockTime(), closingTime()], instead('Write one opening as ["09:00", "18:00"].'))
    .describe('From and until.');
const openingsOf = (weekday: string) =>
  listOf(opening()).describe(`When the shop is open on ${weekday}. Empty or left out: closed.`);

const OpeningHours = section({
  mon: openingsOf('Mondays'),
  tue: openingsOf('Tuesdays'),
  wed: openingsOf('Wednesdays'),
  thu: openingsOf('Thursdays'),
  fri: openingsOf('Fridays'),
  sat: openingsOf('Saturdays'),
  sun: openingsOf('Sundays'),
});

const Water = section({
  alkalinityMgPerLCaCO3: number(0, 5_000, 'Write the alkalinity in mg/L as CaCO3.').describe(
    'Alkalinity, mg/L as CaCO3.',
  ),
  pH: pH().describe('pH of the water as it comes.'),
});

const Sprayer = section({
  name: name().describe('What it is called.'),
  capacity: volume().describe('What one fill holds.'),
  lossPerFill: setting(volume(), '0 mL').describe('What stays in hose and pump with every fill.'),
  measuringStep: setting(volume(), '0 mL').describe('Each fill is rounded up to a multiple of this.'),
});

/** Hours of one day, instead of those of its weekday. */
const SpecialDay = section({
  on: day().describe('Which day.'),
  name: maybe(words(100, 'Write what day it is, such as "Harvest fair".')).describe('What it is called.'),
  hours: listOf(opening()).describe('When the shop is open on it. Empty or left out: closed.'),
});

const Contact = section({
  name: name().describe('Who to call.'),
  phone: words(60, 'Write a telephone number in quotes.').describe('Their telephone number.'),
});

const Emergency = section({
  contacts: listOf(Contact).describe('Who to call, the first one first.'),
  medical: maybe(words(500, 'Write name, address and telephone of the nearest medical facility.')).describe(
    'The nearest medical facility: name, address and telephone.',
  ),
  poisonLine: maybe(words(100, 'Write the telephone number of the poison line.')).describe(
    'The telephone number of the poison line.',
  ),
});

const Measure = section({
  name: name().describe('What it is called: "10 mL cylinder".'),
  holds: size().describe('The most that it measures at once.'),
  step: size().describe('What it can be read to.'),
});

/** What a shop says about itself. */
export const Settings = section({
  name: name().describe('What the shop is called.'),
  timeZone: zone().describe('IANA time zone of the shop.'),
  currency: currency().describe('ISO 4217 code; all money in the file is in it.'),
  units: setting(oneOf('us', 'metric'), 'us').describe('Units to show amounts in. It changes no stored value.'),
  openingHours: sectionOf(OpeningHours).describe('When customers are in the shop.'),
  specialDays: listOf(SpecialDay).describe('Holidays and days with hours of their own.'),
  water: maybe(Water).describe('The water that spray is mixed with. Null when it was never measured.'),
  fillCapacity: setting(volume(), '0 mL').describe(
    'What one sprayer fill holds. Where there are sprayers, their figures count, and this may be left out.',
  ),
  lossPerFill: setting(volume(), '0 mL').describe('What stays in hose and pump with every fill.'),
  measuringStep: setting(volume(), '0 mL').describe(
    'Each fill is rounded up to a multiple of this. "0 mL": not rounded.',
  ),
  sprayers: listOf(Sprayer).describe("The sprayers at hand. The program's own counts, else the first."),
  measures: listOf(Measure).describe('What the shop measures with: syringes, cylinders, spoons, scales.'),
  dropMl: setting(number(0.005, 1, 'Write what a drop is, in mL, such as 0.05.'), 0.05).describe(
    "What a drop of the shop's own dropper is, in mL.",
  ),
  conductivityLimit: maybe(number(0.01, 50, 'Write the conductivity in mS/cm.')).describe(
    'The conductivity above which spray may burn leaves here, mS/cm.',
  ),
  safetyDays: setting(count(0, LONGEST_WAIT, 'Write whole days, 0 or more.'), 0).describe(
    'How many days before it is needed stock should be in.',
  ),
  wagePerHour: maybe(money()).describe('What an hour of work costs.'),
  sameModeInARow: setting(count(1, 100, 'Write a whole number, 1 or more.'), 2).describe(
    'How many applications in a row may carry the same mode-of-action group on one bench; one of high risk may once.',
  ),
  minutesPerPlant: maybe(number(0, 600, 'Write minutes, such as 0.25.')).describe(
    'How long spraying takes for each plant, minutes. With the wage it prices work that no program has planned.',
  ),
  minutesPerBatch: maybe(number(0, 1_440, 'Write minutes, such as 20.')).describe(
    'How long mixing and cleaning up take for each batch, minutes.',
  ),
  oilSulfurDays: setting(count(0, LONGEST_WAIT, 'Write whole days, 0 or more.'), 30).describe(
    'Fewest days between an oil and sulfur on the same bench.',
  ),
  monthlyHighsC: maybe(
    z
      .array(number(-60, 70, 'Write degrees Celsius.'), instead('Write twelve temperatures, January first.'))
      .length(12, {
        error: 'Write twelve temperatures, one for each month, January first; null when they are unknown.',
      }),
  ).describe('The usual highest temperature of each month where the plants stand, °C, January first.'),
  oilHotC: setting(number(0, 60, 'Write degrees Celsius, such as 29.5.'), 29.5).describe(
    'From this temperature on, oils and soaps may burn leaves, °C.',
  ),
  keepRecordsYears: setting(count(2, 100, 'Write whole years, 2 or more.'), 2).describe(
    'How long records of spraying are kept at least, years.',
  ),
  address: maybe(words(300, 'Write where the shop is.')).describe('Where the shop is, for its records and notices.'),
  contact: maybe(words(200, 'Write whom to ask, with a telephone number.')).describe(
    'Whom to ask about a closed bench: name and telephone.',
  ),
  emergency: sectionOf(Emergency).describe('Who is called in an emergency.'),
  capitalPerYear: setting(number(0, 10, 'Write a fraction: 0.10 is 10 % a year.'), 0.1).describe(
    'What money tied up in stock costs in a year, as a fraction of it.',
  ),
});
