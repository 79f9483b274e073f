import 'server-only';
import { addDays, type Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import type { Spraying } from '../engine/ahead/plan';
import { ownDay } from '../engine/ahead/program-turns';
import type { Fig } from './figures';
import { type House, houseNow } from './house';
import { type LeftOutSeen, leftOutSeen } from './left-out';
import { type Missed, missedSeen } from './missed-turn';
import { type MixForm, mixForm } from './mix-form';
import { PageAsked, type PageOf, pageOf } from './pages';
import { plannedQuery } from './planned-query';
import { type RecipeListed, recipesListed } from './recipes';
import { sprayingFlags } from './spraying-flags';
import { type UnderWaySeen, underWaySeen } from './under-way';

/** A planned spraying that can be mixed: what is sprayed where, how much, and what is said against it. */
export type PlannedMix = {
  program: string;
  /** The day on which the program itself has it, and the day it is on now. */
  on: Day;
  date: Day;
  recipe: { id: string; name: string };
  benches: string[];
  /** Null when the mL per plant of some plants is not known. */
  amounts: { sprayMl: Fig; fills: Fig; cost: Fig } | null;
  flags: number;
  stops: number;
  /** What stands after the question mark of its sheet, and of the pages that follow it. */
  query: string;
};

export type MixPlace = Pick<House, 'today' | 'ways'> & {
  /** What was begun on any device and is not on record. */
  underWay: UnderWaySeen[];
  /** One page of what was missed, the latest first. */
  missed: Missed[];
  missedPages: Pages;
  /** What was planned for the last and the next days and left out. */
  leftOut: LeftOutSeen[];
  due: PlannedMix[];
  coming: PlannedMix[];
  /** Which page of those that come is shown. */
  pages: Pages;
  /** The first recipes, and how many there are. */
  recipes: RecipeListed[];
  allRecipes: number;
  form: MixForm;
};

type Pages = Pick<PageOf<unknown>, 'page' | 'pages' | 'isAll'>;

const DAYS_AHEAD = 7;
const DAYS_BACK = 14;

/** As many of each list as keep the page of a large shop light. */
const [MOST_COMING, MOST_MISSED, MOST_RECIPES] = [24, 24, 24];

/** Which page of what comes and of what was missed an address asks for. */
type Asked = { page: string | undefined; missed: string | undefined };

/** What can be mixed: what is due and was missed, what comes, anything else, and the recipes. */
export async function mixPlace(clock: Clock, asked: Asked): Promise<MixPlace | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { today, ways, toSpray, shop } = house;
  const ahead = toSpray.filter(({ date }) => date <= addDays(today, DAYS_AHEAD));
  const later = ahead.filter(({ date }) => date > today);
  const { shown, ...pages } = pageOf(later, PageAsked.parse(asked.page), MOST_COMING, () => 1);
  const { shown: missed, ...missedPages } = pageOf(
    missedSeen(house),
    PageAsked.parse(asked.missed),
    MOST_MISSED,
    () => 1,
  );
  return {
    ...{ today, ways, pages, allRecipes: shop.recipes.length, underWay: underWaySeen(house) },
    ...{ missed, missedPages },
    leftOut: leftOutSeen(shop, addDays(today, -DAYS_BACK), addDays(today, DAYS_AHEAD), today).reverse(),
    due: ahead.filter(({ date }) => date === today).map((spraying) => plannedMix(house, spraying)),
    coming: shown.map((spraying) => plannedMix(house, spraying)),
    recipes: recipesListed(house, shop.recipes.slice(0, MOST_RECIPES)),
    form: mixForm(shop, []),
  };
}

const named = ({ program, date, occurrence, recipe }: Spraying) => ({
  ...{ program: program.id, on: ownDay(program, date, occurrence), date },
  recipe: { id: recipe.id, name: recipe.name },
  benches: program.benches.map(({ name }) => name),
});

function plannedMix({ plan, figure }: House, spraying: Spraying): PlannedMix {
  const { program, date, spray } = spraying;
  const flags = sprayingFlags(plan, spraying);
  const its = (what: string) => figure('spraying', program.id, date, what);
  return {
    ...named(spraying),
    amounts: spray && { sprayMl: its('sprayMl'), fills: its('fills'), cost: its('materialCost') },
    flags: flags.length,
    stops: flags.filter(({ severity }) => severity === 'stop').length,
    query: plannedQuery(spraying),
  };
}
