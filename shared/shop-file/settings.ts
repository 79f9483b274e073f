import { z } from 'zod';
import { WEEKDAYS } from '../time/day';
import {
  clockTime,
  closingTime,
  count,
  currency,
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
  water: maybe(Water).describe('The water that spray is mixed with. Null when it was never measured.'),
  fillCapacity: setting(volume(), '0 mL').describe(
    "What one sprayer fill holds. Where there are sprayers, the first one's figures count, and this may be left out.",
  ),
  lossPerFill: setting(volume(), '0 mL').describe('What stays in hose and pump with every fill.'),
  measuringStep: setting(volume(), '0 mL').describe(
    'Each fill is rounded up to a multiple of this. "0 mL": not rounded.',
  ),
  sprayers: listOf(Sprayer).describe(
    "The sprayers at hand. The first one's figures are used wherever no other is named.",
  ),
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
    'How many applications in a row may carry the same mode of action on one bench.',
  ),
  capitalPerYear: setting(number(0, 10, 'Write a fraction: 0.10 is 10 % a year.'), 0.1).describe(
    'What money tied up in stock costs in a year, as a fraction of it.',
  ),
});
