import { z } from 'zod';
import {
  area,
  clockTime,
  count,
  day,
  dose,
  gtin,
  id,
  instead,
  listOf,
  maybe,
  money,
  name,
  number,
  oneOf,
  reference,
  repeat,
  section,
  sectionOf,
  setting,
  size,
  someOf,
  words,
  yesNo,
} from './fields';
import { MOST_INGREDIENTS, MOST_LISTED, MOST_UNDER_WAY } from './limits';
import { Order } from './order';
import { Application, UnderWay } from './record';
import { LONGEST_WAIT, pH, Settings, weekday } from './settings';

/*
 * The shop file: one JSON format that carries a whole shop in and out. It is a public contract: fields may be added,
 * never renamed, and a field that is not in it is refused, so that a typo cannot be lost.
 */

export const FORMAT = 'bench-and-bottle/shop@1';

const MOST_DAYS = 36_500;
const days = (write: string) => count(0, MOST_DAYS, write);

const archived = () => setting(yesNo(), false);

export const Supplier = section({
  id: id().describe('Unique among the suppliers.'),
  name: name().describe('Who sells.'),
  freightPerOrder: maybe(money()).describe('Freight of one order.'),
  freeFreightOver: maybe(money()).describe('No freight from this value of goods on. Null: freight is always paid.'),
  minimumOrder: maybe(money()).describe('The smallest order they take.'),
  workingDays: setting(
    someOf(weekday(), 'Name the days they work, such as ["mon", "tue"]; leave it out for Monday to Friday.'),
    ['mon', 'tue', 'wed', 'thu', 'fri'],
  ).describe('The days on which orders are taken and sent. Left out: Monday to Friday.'),
  closedOn: listOf(day()).describe('Holidays and other dates on which they do not work.'),
  archived: archived().describe('Whether it is put away: nothing is bought from it any more.'),
});

const Content = section({
  substance: words(200, 'Write the name of a substance.').describe(
    'Active ingredient, nutrient (N, P2O5, K2O …) or acid.',
  ),
  amount: number(0, 5_000, 'Write how much of it there is, 0 or more.').describe(
    'How much of it, in the basis beside it.',
  ),
  basis: oneOf('% w/w', '% w/v', '% v/v', 'g/L', 'g/kg', 'lb/gal').describe('What the amount is measured in.'),
});

const Rate = section({
  use: words(200, 'Write the use that the label names.').describe('Plants and way of use, as the label says.'),
  min: maybe(dose()).describe('The lowest dose for this use.'),
  max: maybe(dose()).describe('The highest dose for this use.'),
});

const PhRange = section({ min: pH().describe('Lowest pH.'), max: pH().describe('Highest pH.') });

const Label = section({
  rates: listOf(Rate).describe('The dose range of each use. Empty: none typed in, and no dose is judged.'),
  reiHours: maybe(number(0, 8_784, 'Write hours, 0 or more; null when it is unknown.')).describe(
    'Restricted-entry interval in hours, kept in whole minutes, rounded up. Null: unknown, which keeps benches closed.',
  ),
  phiDays: maybe(days('Write whole days, 0 or more.')).describe('Pre-harvest interval in days.'),
  maxApplicationsPerYear: maybe(count(0, 1_000, 'Write a whole number, 0 or more.')).describe(
    'Most applications in 365 days.',
  ),
  minDaysBetween: maybe(days('Write whole days, 0 or more.')).describe('Fewest days between two applications.'),
  modes: listOf(words(40, 'Write a mode-of-action group, such as "IRAC 3A".')).describe(
    'Mode-of-action groups, best with their scheme: "IRAC 3A", "FRAC M05". A sub-group counts as its group.',
  ),
  signalWord: maybe(words(40, 'Write the signal word.')).describe('Signal word.'),
  protectiveEquipment: listOf(words(100, 'Write one piece of equipment.')).describe('What to wear.'),
  sprayPh: maybe(PhRange).describe('The pH the mixed spray must have.'),
  doNotMixWith: listOf(words(200, 'Write what it must not be mixed with.')).describe(
    'Product ids, names, substances, kinds or formulations that must not share a tank with it.',
  ),
  registration: maybe(words(100, 'Write the registration number in quotes.')).describe('Registration number.'),
  hotAboveC: maybe(number(0, 60, 'Write degrees Celsius.')).describe('It must not be sprayed above this, °C.'),
  firstAid: maybe(words(3_000, 'Write what the label says on first aid, in one line.')).describe(
    'First aid, as the label says it.',
  ),
  storage: maybe(words(500, 'Write how the label wants it stored.')).describe('How it is to be stored.'),
});

const ShelfLife = section({
  unopenedDays: maybe(days('Write whole days, 0 or more.')).describe('Days it keeps unopened, from the day received.'),
  openedDays: maybe(days('Write whole days, 0 or more.')).describe('Days it keeps once opened.'),
});

/** What a product may be for. */
export const PRODUCT_KINDS = [
  'nutrient',
  'biostimulant',
  'insecticide',
  'miticide',
  'insecticide/miticide',
  'fungicide',
  'surfactant',
  'pH adjuster',
  'other',
] as const;

const Source = section({
  product: reference('product').describe('Id of a product in it.'),
  dose: dose().describe('How much of that product the stock solution holds.'),
});

export const Product = section({
  id: id().describe('Unique among the products.'),
  name: name().describe('What it says on the bottle.'),
  kind: oneOf(...PRODUCT_KINDS).describe('What it is for.'),
  form: oneOf('liquid', 'powder').describe('Stock of a liquid is kept by volume, of a powder by mass.'),
  formulation: maybe(words(40, 'Write a formulation class, such as "EC".')).describe(
    'Formulation class, such as EC, SC, WP.',
  ),
  densityGPerMl: maybe(number(0.01, 25, 'Write the density in g/mL.')).describe('Density, g/mL.'),
  gramsPerTeaspoon: maybe(number(0.01, 100, 'Write what a level teaspoon weighs, in g.')).describe(
    'Grams in one level teaspoon.',
  ),
  contents: listOf(Content).describe('What is in it.'),
  label: sectionOf(Label).describe("What the product's own label says."),
  shelfLife: sectionOf(ShelfLife).describe('How long it keeps.'),
  mixOrder: maybe(count(0, 1_000, 'Write a whole number.')).describe(
    'Place in the order of mixing, instead of the usual one.',
  ),
  alkaliSilicate: setting(yesNo(), false).describe('Whether it is an alkali silicate.'),
  gtins: listOf(gtin()).describe('The numbers under the bar codes of its packs (GTIN), with their check digit.'),
  madeFrom: listOf(Source).describe(
    'A stock solution mixed in the shop: what is in it. Limits on applications count for those products too.',
  ),
  archived: archived().describe('Whether it is put away: it is offered nowhere any more, and what it did stays.'),
});

const Break = section({
  atLeast: count(2, 1_000_000, 'Write a whole number of packs, 2 or more.').describe('From this many packs on.'),
  price: money().describe('Price of one pack then.'),
});

const EarlierPrice = section({
  since: maybe(day()).describe('The day from which it held.'),
  price: money().describe('Price of one pack.'),
  breaks: listOf(Break).describe('Lower prices for more packs.'),
});

export const Offer = section({
  id: id().describe('Unique among the offers.'),
  supplier: reference('supplier').describe('Id of the supplier.'),
  product: reference('product').describe('Id of the product.'),
  pack: size().describe('What one pack holds.'),
  price: money().describe('Price of one pack.'),
  breaks: listOf(Break).describe('Lower prices for more packs.'),
  leadDays: maybe(count(0, LONGEST_WAIT, 'Write whole days, 0 or more.')).describe(
    "From order to arrival, in the supplier's working days.",
  ),
  since: maybe(day()).describe('The day from which this price holds. Null: nobody noted it.'),
  earlier: listOf(EarlierPrice).describe('What it cost before, the oldest first.'),
  archived: archived().describe('Whether it is put away: it can no longer be bought.'),
});

export const Lot = section({
  id: id().describe('Unique among the lots.'),
  product: reference('product').describe('Id of the product.'),
  pack: size().describe('What one container holds when full.'),
  count: setting(count(1, 10_000, 'Write a whole number of containers, 1 or more.'), 1).describe(
    'How many containers.',
  ),
  remaining: maybe(size()).describe('What is left in it. Null: it is full.'),
  paid: maybe(money()).describe('What the whole lot cost, without freight.'),
  receivedOn: day().describe('The day it came.'),
  openedOn: maybe(day()).describe('The day it was opened.'),
  expiresOn: maybe(day()).describe('The last day printed on it.'),
  keptIn: maybe(words(100, 'Write where it stands, such as "cabinet, top shelf".')).describe('Where it stands.'),
  order: maybe(reference('order')).describe('The order that it came with.'),
  offer: maybe(reference('offer')).describe('Which line of that order it is.'),
});

const PlantGroup = section({
  name: name().describe('Which plants.'),
  pot: maybe(words(40, 'Write a pot size, such as "4 in".')).describe('Pot size.'),
  count: count(0, 1_000_000, 'Write a whole number of plants, 0 or more.').describe('How many plants.'),
  mlPerPlant: maybe(number(0, 100_000, 'Write the mL that one plant takes.')).describe('Spray for one plant, mL.'),
});

export const Bench = section({
  id: id().describe('Unique among the benches.'),
  name: name().describe('What it is called.'),
  customers: setting(yesNo(), true).describe('Whether customers can reach it. Left out: they can.'),
  enclosed: setting(yesNo(), true).describe('Whether it stands in an enclosed space. Left out: it does.'),
  coverage: setting(number(0.001, 100, 'Write a factor above 0; 1 is usual.'), 1).describe(
    'Factor on the spray of its plants.',
  ),
  area: maybe(area()).describe('How large it is. Doses per area need it.'),
  place: maybe(words(200, 'Write where it stands, such as "house 2, north side".')).describe(
    'Where it stands, as a record of spraying describes it.',
  ),
  harvestOn: maybe(day()).describe('The next day on which something on it is harvested or sold.'),
  plants: listOf(PlantGroup).describe('What stands on it.'),
});

const Ingredient = section({
  product: reference('product').describe('Id of the product.'),
  dose: dose().describe('How much of it goes into the spray.'),
  use: maybe(words(200, 'Write the use, as the label names it.')).describe('Which rate of the label applies.'),
  order: maybe(count(0, 1_000, 'Write a whole number.')).describe(
    'Place in the order of mixing in this recipe, instead of the usual one.',
  ),
});

export const Recipe = section({
  id: id().describe('Unique among the recipes.'),
  name: name().describe('What it is called.'),
  targetPh: maybe(pH()).describe('The pH to bring the spray to.'),
  useWithinHours: maybe(number(0, 8_784, 'Write hours, 0 or more.')).describe(
    'How long the mixed spray may be used, hours.',
  ),
  ingredients: listOf(Ingredient, MOST_INGREDIENTS).describe('What goes into it.'),
});

export const Change = section({
  on: day().describe('The day on which the program itself has this spraying.'),
  kind: oneOf('done', 'skipped', 'moved').describe('What became of it.'),
  application: maybe(reference('application')).describe('Done: the record of it.'),
  movedTo: maybe(day()).describe('Moved: the day it is on now.'),
  startTime: maybe(clockTime()).describe('Moved: when it starts there. Null: as the program has it.'),
  reason: maybe(words(500, 'Write why.')).describe('Why.'),
});

export const Program = section({
  id: id().describe('Unique among the programs.'),
  recipes: someOf(reference('recipe'), 'Name at least one recipe by its id, such as ["r1"].').describe(
    'Ids of recipes; several rotate, one per occurrence from startsOn.',
  ),
  benches: someOf(reference('bench'), 'Name at least one bench by its id, such as ["b1"].').describe(
    'Ids of the benches sprayed together.',
  ),
  startsOn: day().describe('The first day of the season.'),
  endsOn: maybe(day()).describe('The last day of the season. Null: it goes on.'),
  repeat: maybe(repeat()).describe('A recurrence rule of RFC 5545. Null: once, on startsOn.'),
  startTime: clockTime().describe("When spraying starts, on the shop's clock."),
  minutes: count(0, 10_080, 'Write whole minutes, 0 or more.').describe('How long spraying takes.'),
  sprayer: maybe(name()).describe('The name of one of shop.sprayers that it is sprayed with. Null: the first.'),
  changes: listOf(Change).describe('What became of single sprayings: done, skipped, or moved to another day or time.'),
});

/** A whole shop, as one JSON document. What parsing gives has every default filled in. */
export const ShopFile = section({
  format: z.literal(FORMAT, instead(`Write "${FORMAT}".`)).describe('Which format this is, and which version of it.'),
  shop: Settings.describe('The shop itself.'),
  suppliers: listOf(Supplier, MOST_LISTED.suppliers).describe('Who sells to the shop.'),
  products: listOf(Product, MOST_LISTED.products).describe('What the shop keeps on its shelf.'),
  offers: listOf(Offer, MOST_LISTED.offers).describe('Packs that can be bought.'),
  lots: listOf(Lot, MOST_LISTED.lots).describe('Containers on the shelf. A lot of several is that many full ones.'),
  benches: listOf(Bench, MOST_LISTED.benches).describe('Groups of plants sprayed together.'),
  recipes: listOf(Recipe, MOST_LISTED.recipes).describe('What is mixed.'),
  programs: listOf(Program, MOST_LISTED.programs).describe('What is sprayed where, and how often.'),
  applications: listOf(Application, MOST_LISTED.applications).describe('What was really sprayed.'),
  orders: listOf(Order, MOST_LISTED.orders).describe(
    'What was ordered. What of it has come are the lots that name it.',
  ),
  underWay: z
    .array(UnderWay)
    .max(MOST_UNDER_WAY)
    .optional()
    .describe('Sprayings that were begun and are not on record yet. They close their benches.'),
});
export type ShopFile = z.output<typeof ShopFile>;

/** The same as a person writes it: whatever may be left out may be missing. */
export type WrittenShopFile = z.input<typeof ShopFile>;

/** One thing of a list, as it is written. */
export type Written<List extends keyof WrittenShopFile> =
  NonNullable<WrittenShopFile[List]> extends (infer One)[] ? One : never;
