import {
  count,
  day,
  dose,
  id,
  instant,
  listOf,
  maybe,
  money,
  name,
  number,
  reference,
  section,
  setting,
  size,
  someOf,
  volume,
  words,
  yesNo,
} from './fields';
import { pH } from './settings';

/*
 * What a shop file says of one spraying that was done. A file made by hand needs no more than what, where and when.
 */

const Sprayed = section({
  product: reference('product').describe('Id of the product.'),
  dose: dose().describe('Its dose in the recipe as it was sprayed.'),
  amount: maybe(size()).describe('How much of it went in.'),
  name: maybe(name()).describe('What it was called then.'),
  registration: maybe(words(100, 'Write the registration number in quotes.')).describe('Its registration number then.'),
  actives: maybe(words(1_000, 'Write its active ingredients.')).describe('Its active ingredients then.'),
  reiMinutes: maybe(count(0, 527_040, 'Write whole minutes, 0 or more; null when it was unknown.')).describe(
    'The restricted-entry interval that its label had then, in whole minutes.',
  ),
});

export const Passed = section({
  rule: words(60, 'Write the name of the rule.').describe('The rule of the flag that said stop.'),
  reason: words(500, 'Write the reason.').describe('Why it was sprayed all the same.'),
});

const Acid = section({
  product: reference('product').describe('Id of the acid.'),
  amount: size().describe('How much of it went in before the pH was measured.'),
});

export const Application = section({
  id: id().describe('Unique among the applications.'),
  recipe: reference('recipe').describe('Id of the recipe that was sprayed.'),
  benches: someOf(reference('bench'), 'Name at least one bench by its id, such as ["b1"].').describe(
    'Ids of the benches that were sprayed.',
  ),
  startedAt: instant().describe('When it started.'),
  endedAt: maybe(instant()).describe('When it ended. Null while it is running, or when nobody noted it.'),
  by: maybe(name()).describe('Who sprayed.'),
  products: listOf(Sprayed).describe('What went in, as it was recorded. Empty: what the recipe says.'),
  sprayed: maybe(volume()).describe('How much spray was mixed.'),
  leftover: maybe(volume()).describe('How much of it was left.'),
  leftoverWent: maybe(words(300, 'Write what became of it.')).describe('What became of what was left.'),
  conditions: maybe(words(300, 'Write the weather, or the temperature in the house.')).describe(
    'Weather, or temperature in the house.',
  ),
  pH: maybe(pH()).describe('What the pH meter said.'),
  acid: maybe(Acid).describe('What had been poured to bring the pH there.'),
  passed: listOf(Passed).describe('Flags that said stop and were passed, and why.'),
  plannedCost: maybe(money()).describe('What the product in it was to cost.'),
  cost: maybe(money()).describe('What the product in it cost, as it was drawn from the bottles.'),
  plants: maybe(words(300, 'Write which plants.')).describe('Which plants, when not all on the benches.'),
  mixedAt: maybe(instant()).describe('When it was mixed, from when on its use-within time counts.'),
  temperatureC: maybe(number(-60, 70, 'Write degrees Celsius.')).describe('How warm it was, °C.'),
  crop: maybe(words(1_000, 'Write what was treated.')).describe('The plants or the site treated, as they were then.'),
  location: maybe(words(1_000, 'Write where it was.')).describe('Where that is and which part of it, as it was then.'),
  closedUntil: maybe(instant()).describe(
    'Closed at least until then, whatever else this says: an amendment that would open earlier is not confirmed.',
  ),
  withdrawn: setting(yesNo(), false).describe(
    'Whether it was entered in error: it stays on record and counts nowhere.',
  ),
  extra: setting(yesNo(), false).describe('Whether it was an extra mix beside the plan: it is no planned spraying.'),
});

/** A spraying that was begun and is not on record yet. Its record has the same id. */
export const UnderWay = section({
  id: id().describe('The id that its record will have.'),
  recipe: reference('recipe').nullable().describe('Id of the recipe. Null: it is not known, so neither is its end.'),
  benches: listOf(reference('bench')).describe('Ids of the benches being sprayed. Empty: it may be any.'),
  program: maybe(id()).describe('The program whose planned spraying it is.'),
  on: maybe(day()).describe('The day on which that program has it.'),
  startedAt: instant().describe('When it started.'),
  endedAt: maybe(instant()).describe('When the last plant was sprayed. Null: it is going on, or nobody told.'),
  closedUntil: maybe(instant()).describe('Closed at least until then: its end was told after its interval was over.'),
  reiMinutes: maybe(count(0, 527_040, 'Write whole minutes, 0 or more; null when it was unknown.')).describe(
    'The longest interval of its recipe when it was told, in whole minutes.',
  ),
  by: maybe(name()).describe('Who sprays.'),
  passed: listOf(Passed).describe('Flags that said stop and were passed, and why.'),
});
