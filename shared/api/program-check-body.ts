import { z } from 'zod';
import { shopAsked } from '../forms/command-fields';

const typed = z.string().max(500);
const chosen = z.array(typed).max(200);

/** What `POST /api/v1/program-check` takes: a program as it is being typed, readable or not. */
export const ProgramCheckBody = z.strictObject({
  shop: shopAsked(),
  program: z.string().max(64).describe('The id of the program that is changed; empty for a new one.'),
  recipes: chosen.describe('Ids of recipes in their turn.'),
  benches: chosen.describe('Ids of benches.'),
  startsOn: typed.describe('The first day, as text.'),
  endsOn: typed.describe('The last day, as text; empty when it goes on.'),
  startTime: typed.describe('When it starts, as text, such as 17:30.'),
  minutes: typed.describe('How long it takes, as text.'),
  sprayer: typed.default('').describe('The name of a sprayer; empty for the first.'),
  kind: typed.describe('How it comes back: once, weeks, days or rule.'),
  weekdays: chosen.describe('Days of the week, such as tue.'),
  everyWeeks: typed.describe('Every so many weeks, as text.'),
  everyDays: typed.describe('Every so many days, as text.'),
  rule: typed.describe('A rule of RFC 5545.'),
});
