import 'server-only';
import { addDays, type Day } from '@/shared/time/day';
import type { Clock } from '../clock';
import { newCommandId } from '../data/new-id';
import { overdueSprayings } from '../engine/ahead/overdue';
import type { Spraying } from '../engine/ahead/plan';
import { ownDay } from '../engine/ahead/program-turns';
import type { OpenSpraying } from '../engine/ahead/turns-on-record';
import type { Fig } from './figures';
import { type House, houseNow } from './house';
import { type MixForm, mixForm } from './mix-form';
import { mixAsked, mixFigures } from './mix-screen';
import { plannedQuery } from './planned-query';
import { type RecipeListed, recipesListed } from './recipes';
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
  shop: string;
  commandId: string;
  /** What was begun on any device and is not on record. */
  underWay: UnderWaySeen[];
  overdue: PlannedMix[];
  due: PlannedMix[];
  coming: PlannedMix[];
  recipes: RecipeListed[];
  form: MixForm;
};

const DAYS_AHEAD = 7;

/** What can be mixed: what is due and was missed, what comes, anything else, and the recipes. */
export async function mixPlace(clock: Clock): Promise<MixPlace | null> {
  const house = await houseNow(clock);
  if (!house) return null;
  const { today, ways, toSpray, shop } = house;
  const ahead = toSpray.filter(({ date }) => date <= addDays(today, DAYS_AHEAD));
  return {
    ...{ today, ways, shop: house.id, commandId: newCommandId(), underWay: underWaySeen(house) },
    overdue: overdueSprayings(shop, today).map((spraying) => missedMix(house, spraying)),
    due: ahead.filter(({ date }) => date === today).map((spraying) => plannedMix(house, spraying)),
    coming: ahead.filter(({ date }) => date > today).map((spraying) => plannedMix(house, spraying)),
    recipes: recipesListed(house),
    form: mixForm(shop, []),
  };
}

const named = ({ program, date, occurrence, recipe, open = program.benches }: Spraying & Partial<OpenSpraying>) => ({
  ...{ program: program.id, on: ownDay(program, date, occurrence), date },
  recipe: { id: recipe.id, name: recipe.name },
  benches: open.map(({ name }) => name),
});

function plannedMix({ plan, figure }: House, spraying: Spraying): PlannedMix {
  const { program, date, spray } = spraying;
  const flags = plan.flags.filter((flag) => flag.program === program.id && flag.on === date);
  const its = (what: string) => figure('spraying', program.id, date, what);
  return {
    ...named(spraying),
    amounts: spray && { sprayMl: its('sprayMl'), fills: its('fills'), cost: its('materialCost') },
    flags: flags.length,
    stops: flags.filter(({ severity }) => severity === 'stop').length,
    query: plannedQuery(spraying),
  };
}

/** One that was missed is in no plan any more: it is worked out as if it were mixed now. */
function missedMix(house: House, spraying: OpenSpraying): PlannedMix {
  const query = plannedQuery(spraying);
  const mix = mixAsked(house, [...new URLSearchParams(query)]);
  const flags = mix.ok ? mix.value.flags : [];
  const figure = mix.ok ? mixFigures(mix.value) : null;
  return {
    ...named(spraying),
    amounts: figure && { sprayMl: figure('sprayMl'), fills: figure('fills'), cost: figure('cost', 'material') },
    flags: flags.length,
    stops: flags.filter(({ severity }) => severity === 'stop').length,
    query,
  };
}
