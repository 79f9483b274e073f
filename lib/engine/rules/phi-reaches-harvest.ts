import { dayNumber } from '@/shared/time/day';
import type { Bench, Product, Recipe } from '../shop';
import type { Flag, Severity } from './flag';
import { benchNames, counted, dayNear, heldIn } from './in-words';
import { flagBenches, flagSpraying } from './raise';
import { benchMemory, productsOf, type Turn, turnsOf } from './turns';
import type { Unflagged } from './unflagged';

/**
 * Something would be harvested or sold before the pre-harvest interval of what was sprayed on it has passed.
 *
 * Looks at  each bench that has a harvest date, and every product sprayed there on that date or before it: as planned, and
 *           as recorded for a harvest that is still to come. Dates are whole days on the shop's clock. What is sprayed
 *           after the harvest date has nothing to do with it
 * Fires     when the day of spraying + the label's pre-harvest interval is after the harvest date; on that date itself the
 *           interval has passed. Also when the interval is unknown, for a record of the last 365 days; and once for a bench
 *           whose harvest date is past while more is to be sprayed there. Once for a spraying and product, with every bench
 *           concerned; for records once for a product
 * Severity  stop; warn when the interval is unknown, or the harvest date past
 * Cleared   by spraying sooner, by something with a shorter interval, by a later harvest date, or by entering the interval
 */
export function phiReachesHarvest(plan: Unflagged, turns: Turn[] = turnsOf(plan)): Flag[] {
  if (!plan.shop.benches.some(({ harvestOn }) => harvestOn !== null)) return [];
  const products = productsOf(({ label }) => label.phiDays !== 0, isLonger);
  return [...onRecord(plan, turns, products), ...ahead(plan, turns, products)];
}

/** Two unknown intervals are said once; a known one beside an unknown one is said as well. */
const isLonger = ({ label: { phiDays: source } }: Product, { label: { phiDays: solution } }: Product): boolean =>
  source === null || solution === null ? source === solution : source >= solution;

type InRecipe = (recipe: Recipe) => readonly Product[];
/** A product on a bench with the day it was sprayed. */
type Sprayed = { bench: Bench; recipe: Recipe; day: number; harvest: number };

function ahead(plan: Unflagged, turns: Turn[], products: InRecipe): Flag[] {
  const flags: Flag[] = [];
  const toldOf = benchMemory(() => ({ past: false }));
  const today = dayNumber(plan.today);
  for (const turn of turns) {
    if (!turn.planned) continue;
    for (const product of products(turn.recipe)) {
      const on = turn.spots.flatMap((spot) => sprayedOn(turn, spot.bench));
      const about = aboutIt(
        product,
        on.filter((one) => reaches(product, one)),
      );
      if (about) flags.push(flagSpraying(turn.planned, about, () => messageFor(plan, turn, product, about.late)));
      const past = turn.spots.filter((spot) => isPast(spot.bench, today) && !toldOf(spot).past);
      for (const spot of past) toldOf(spot).past = true;
      if (past.length > 0)
        flags.push(
          flagPast(
            turn.planned,
            product,
            past.map(({ bench }) => bench),
          ),
        );
    }
  }
  return flags;
}

/** The latest record of each product on each bench decides: what was sprayed before it is clear no later. */
function onRecord(plan: Unflagged, turns: Turn[], products: InRecipe): Flag[] {
  const today = dayNumber(plan.today);
  const latest = new Map<Product, Map<Bench, Sprayed>>();
  for (const turn of turns) {
    if (turn.planned) continue;
    for (const product of products(turn.recipe)) {
      const onBenches = latest.get(product) ?? new Map<Bench, Sprayed>();
      latest.set(product, onBenches);
      for (const { bench } of turn.spots) for (const one of sprayedOn(turn, bench)) onBenches.set(bench, one);
    }
  }
  return [...latest].flatMap(([product, onBenches]) => {
    const asked = [...onBenches.values()].filter(
      ({ harvest, day }) => harvest >= today && (product.label.phiDays !== null || day > today - YEAR),
    );
    const about = aboutIt(
      product,
      asked.filter((one) => reaches(product, one)),
    );
    return about ? flagBenches(plan, about, () => recordedMessage(plan, product, about.late)) : [];
  });
}

const YEAR = 365;

/** A bench with a harvest that a turn comes before. */
function sprayedOn({ recipe, day }: Turn, bench: Bench): Sprayed[] {
  const harvest = bench.harvestOn === null ? null : dayNumber(bench.harvestOn);
  return harvest === null || day > harvest ? [] : [{ bench, recipe, day, harvest }];
}

const reaches = ({ label: { phiDays } }: Product, { day, harvest }: Sprayed): boolean =>
  phiDays === null || day + phiDays > harvest;

const isPast = ({ harvestOn }: Bench, today: number): boolean => harvestOn !== null && dayNumber(harvestOn) < today;

function aboutIt(product: Product, late: Sprayed[]) {
  if (late.length === 0) return null;
  const severity: Severity = product.label.phiDays === null ? 'warn' : 'stop';
  return { rule: 'phi-reaches-harvest', severity, product, benches: late.map(({ bench }) => bench), late } as const;
}

function flagPast(planned: NonNullable<Turn['planned']>, product: Product, benches: Bench[]): Flag {
  const about = { rule: 'phi-reaches-harvest', severity: 'warn', product, benches } as const;
  return flagSpraying(
    planned,
    about,
    () =>
      `The harvest date of ${benchNames(benches)} is past, so nobody can say whether ${product.name} is sprayed in time for the next one. Enter when something there is harvested or sold next.`,
  );
}

function messageFor(plan: Unflagged, { recipe, day }: Turn, product: Product, late: readonly Sprayed[]): string {
  const harvest = harvestsInWords(plan, late);
  const { phiDays } = product.label;
  if (phiDays === null) return `${heldIn(recipe, product)}${unknown(product, harvest)}`;
  const first = Math.min(...late.map((one) => one.harvest));
  return `${heldIn(recipe, product)}${factOf(product, phiDays)}: after this, until ${dayNear(plan, day + phiDays)}. ${harvest}. Spray it on ${dayNear(plan, first - phiDays)} at the latest, use something with a shorter interval, or harvest on ${dayNear(plan, day + phiDays)} or later.`;
}

function recordedMessage(plan: Unflagged, product: Product, late: readonly Sprayed[]): string {
  const harvest = harvestsInWords(plan, late);
  const { phiDays } = product.label;
  if (phiDays === null) return unknown(product, harvest);
  const last = Math.max(...late.map(({ day }) => day));
  return `${factOf(product, phiDays)}, and it was sprayed there on ${dayNear(plan, last)}. ${harvest}. Harvest and sell nothing there before ${dayNear(plan, last + phiDays)}, and enter that date.`;
}

const factOf = ({ name }: Product, phiDays: number): string =>
  `The label of ${name} asks for ${counted(phiDays, 'day')} before harvest`;

const unknown = ({ name }: Product, harvest: string): string =>
  `No pre-harvest interval is entered for ${name}. ${harvest}. Enter the days from its label; write 0 if the label says 0.`;

function harvestsInWords(plan: Unflagged, late: readonly Sprayed[]): string {
  const days = [...new Set(late.map(({ harvest }) => harvest))];
  return days
    .map((day) => {
      const benches = late.filter(({ harvest }) => harvest === day).map(({ bench }) => bench);
      return `${benchNames(benches)} is harvested or sold on ${dayNear(plan, day)}`;
    })
    .join('; ');
}
