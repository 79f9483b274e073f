import type { Dose } from '@/shared/measure/dose';
import type { Micros, Minutes, Stock } from '@/shared/quantity/amounts';
import type { Exact } from '@/shared/quantity/exact';
import type { PRODUCT_KINDS } from '@/shared/shop-file/contract';
import type { Day, Weekday } from '@/shared/time/day';
import type { Instant } from '@/shared/time/instant';
import type { Repeat } from '@/shared/time/recurrence';
import type { WorkingDays } from '@/shared/time/working-days';
import type { Zone } from '@/shared/time/zone';

/*
 * The plain in-memory shop that every calculation takes. References are already followed: a program holds its recipes,
 * an ingredient its product. `null` means unknown, and unknown is never treated as zero.
 */

export type Shop = {
  name: string;
  zone: Zone;
  currency: string;
  units: 'us' | 'metric';
  /** Opening intervals of each weekday in minutes since midnight, in order, not overlapping. */
  openingHours: Record<Weekday, [from: number, to: number][]>;
  /** Days with hours of their own: those hold instead of the weekday's; none means closed. */
  specialDays: ReadonlyMap<Day, { name: string | null; hours: [from: number, to: number][] }>;
  water: { alkalinityMgPerLCaCO3: number; pH: number } | null;
  /** The sprayer that is meant wherever none is named: the first of `sprayers`, where there are any. */
  sprayer: Sprayer;
  sprayers: NamedSprayer[];
  measures: Measure[];
  /** What a drop of the shop's own dropper is, µL. */
  drop: Exact;
  /** The conductivity above which spray may burn leaves, mS/cm. */
  conductivityLimit: number | null;
  safetyDays: number;
  wagePerHour: Micros | null;
  /** How many applications in a row may carry the same mode of action on one bench. */
  sameModeInARow: number;
  /** Cost of capital as a fraction of its amount per year. */
  capitalPerYear: number;
  /** Work that no program has planned: minutes for each plant, and for each batch. */
  minutesPerPlant: number | null;
  minutesPerBatch: number | null;
  /** Fewest days between an oil and sulfur on one bench. */
  oilSulfurDays: number;
  /** The usual highest temperature of each month, °C, January first. */
  monthlyHighsC: number[] | null;
  /** From here on oils and soaps may burn leaves, °C. */
  oilHotC: number;
  keepRecordsYears: number;
  address: string | null;
  /** Whom to ask about a closed bench. */
  contact: string | null;
  emergency: { contacts: { name: string; phone: string }[]; medical: string | null; poisonLine: string | null };
  suppliers: Supplier[];
  products: Product[];
  offers: Offer[];
  containers: Container[];
  benches: Bench[];
  recipes: Recipe[];
  programs: Program[];
  applications: Application[];
  orders: Order[];
  /** Benches of which nothing can be said, because something that may have closed them cannot be read. Left out: none. */
  unreadBenches?: ReadonlySet<string>;
  /** Sprayings that were begun and are not on record yet. Left out: none. */
  underWay?: readonly UnderWay[];
};

/** What is sprayed with: mL, exact, because a spray volume is worked out and not kept in stock. */
export type Sprayer = { capacity: Exact; lossPerFill: Exact; measuringStep: Exact; printed?: Printed };
/** As they were typed: what is printed on the jug or the tank, such as "2 gal" and "0.5 L". */
type Printed = { capacity: string; step: string };

export type NamedSprayer = Sprayer & { name: string };

/** What the shop measures with: the most at once and the step it is read to (or, of drops, counted in); µL or mg, exact. */
export type Measure = {
  name: string;
  kind: 'volume' | 'mass';
  holds: Exact;
  step: Exact;
  holdsText: string;
  stepText: string;
  isCounted?: boolean;
};

export type Supplier = {
  id: string;
  name: string;
  freightPerOrder: Micros | null;
  freeFreightOver: Micros | null;
  minimumOrder: Micros | null;
  /** The days on which an order is taken, sent and received: the shop is open then, too. */
  workingDays: WorkingDays;
  /** The days on which the supplier itself is closed. */
  closedOn: Day[];
  archived: boolean;
};

export type ProductKind = (typeof PRODUCT_KINDS)[number];

export type Basis = '% w/w' | '% w/v' | '% v/v' | 'g/L' | 'g/kg' | 'lb/gal';
export type Content = { substance: string; amount: number; basis: Basis };

export type Product = {
  id: string;
  name: string;
  kind: ProductKind;
  form: 'liquid' | 'powder';
  formulation: string | null;
  densityGPerMl: number | null;
  gramsPerTeaspoon: number | null;
  contents: Content[];
  label: Label;
  shelfLife: { unopenedDays: number | null; openedDays: number | null };
  mixOrder: number | null;
  alkaliSilicate: boolean;
  gtins: string[];
  /** What a stock solution holds; empty for what is bought. */
  madeFrom: { product: Product; dose: Dose }[];
  archived: boolean;
};

export type Rate = { use: string; min: Dose | null; max: Dose | null };

type Label = {
  rates: Rate[];
  rei: Minutes | null;
  phiDays: number | null;
  maxApplicationsPerYear: number | null;
  minDaysBetween: number | null;
  modes: string[];
  signalWord: string | null;
  protectiveEquipment: string[];
  sprayPh: { min: number; max: number } | null;
  doNotMixWith: string[];
  registration: string | null;
  /** Not to be sprayed above this, °C. */
  hotAboveC: number | null;
  firstAid: string | null;
  storage: string | null;
};

export type Offer = {
  id: string;
  supplier: Supplier;
  product: Product;
  packText: string;
  /** µL or mg, exact: a price per unit is a rate, and the ledger rounds what is received. */
  pack: Exact;
  price: Micros;
  /** Percent of what it is sold for, where somebody supposes another price. */
  supposedPercent?: number;
  breaks: { atLeast: number; price: Micros }[];
  leadDays: number | null;
  /** The day from which the price holds; null when nobody noted it. */
  since: Day | null;
  /** What it cost before, the oldest first. */
  earlier: OfferPrice[];
  /** What it will cost, the next first. */
  later: OfferPrice[];
  /** Whether it or its supplier was put away. */
  putAway: boolean;
  /** Whether its first price is still to come. */
  notYet: boolean;
  /** Whether it cannot be bought: put away, or not yet. */
  archived: boolean;
};

/** A price of an offer and the day from which it holds; null when nobody noted it. */
export type OfferPrice = { since: Day | null; price: Micros; breaks: { atLeast: number; price: Micros }[] };

/** One container of a lot, as it stands today. A lot of three is three of these. */
export type Container = {
  lot: string;
  /** Position in its lot, from 0. */
  place: number;
  product: Product;
  packText: string;
  size: Stock;
  remaining: Stock;
  /** This container's share of what the lot cost; null when that was never entered. */
  paid: Micros | null;
  receivedOn: Day;
  openedOn: Day | null;
  expiresOn: Day | null;
  keptIn: string | null;
  /** The order, and the offer of it, that it came with. */
  order: string | null;
  offer: string | null;
};

export type PlantGroup = { name: string; pot: string | null; count: number; mlPerPlant: number | null };

export type Bench = {
  id: string;
  name: string;
  customers: boolean;
  enclosed: boolean;
  coverage: number;
  /** m², exact; null when nobody measured it. */
  area: Exact | null;
  place: string | null;
  /** The next day on which something on it is harvested or sold. */
  harvestOn: Day | null;
  plants: PlantGroup[];
};

export type Ingredient = {
  product: Product;
  dose: Dose;
  use: string | null;
  /** Its place in the order of mixing in this recipe, instead of the usual one. */
  order: number | null;
};

export type Recipe = {
  id: string;
  name: string;
  targetPh: number | null;
  useWithin: Minutes | null;
  ingredients: Ingredient[];
};

export type Program = {
  id: string;
  /** Several recipes rotate in order, one per occurrence counted from startsOn. */
  recipes: Recipe[];
  benches: Bench[];
  startsOn: Day;
  endsOn: Day | null;
  repeat: Repeat | null;
  /** Minutes since midnight in the shop's zone. */
  startMinute: number;
  duration: Minutes;
  /** What it is sprayed with; null: the shop's own, which is the first. */
  sprayer: NamedSprayer | null;
  /** What became of single sprayings, by the day on which the program itself has them. */
  changes: SprayingChange[];
};

export type SprayingChange = {
  on: Day;
  kind: 'done' | 'skipped' | 'moved';
  /** The record, when it was done. */
  application: string | null;
  movedTo: Day | null;
  /** When it starts there; null: as the program has it. */
  startMinute: number | null;
  reason: string | null;
};

export type Application = {
  id: string;
  /** The recipe, with what went in when it was sprayed. */
  recipe: Recipe;
  benches: Bench[];
  startedAt: Instant;
  /** Null while it is running, or when nobody noted the end. */
  endedAt: Instant | null;
  /** The longest interval that the labels had when it was recorded; null when any was unknown, or none was noted. */
  recordedRei: Minutes | null;
  /** How much of each product went in; null when nobody noted it. In the order of the recipe as it was sprayed. */
  amounts: (Stock | null)[];
  by: string | null;
  /** How much spray was mixed, mL. */
  sprayed: Exact | null;
  pH: number | null;
  acid: { product: Product; amount: Stock } | null;
  plannedCost: Micros | null;
  cost: Micros | null;
  /** From when on its use-within time counts. */
  mixedAt: Instant | null;
  temperatureC: number | null;
  /** Closed at least until then: an amendment that would open earlier is not confirmed. */
  closedUntil: Instant | null;
  /** Entered in error: on record, and counting nowhere. */
  withdrawn: boolean;
  /** An extra mix beside the plan: it is no planned spraying. */
  isExtra: boolean;
};

/** A spraying that was begun and is not on record yet. It counts like a record. */
export type UnderWay = Application & {
  /** Which planned spraying it is, by the day on which its program has it. */
  planned: { program: string; on: Day } | null;
};

export type Order = {
  id: string;
  supplier: Supplier;
  placedOn: Day;
  expectedOn: Day | null;
  /** What was ordered, and how many packs of it have come. */
  lines: { offer: Offer; count: number; price: Micros | null; received: number }[];
  freight: Micros | null;
  note: string | null;
  /** From then on nothing more of it is expected; null: the rest still is. */
  closedOn: Day | null;
};
