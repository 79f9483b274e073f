import 'server-only';
import { type ProgramDraft, programOfDraft } from '@/shared/forms/program';
import { accept, type Outcome } from '@/shared/outcome';
import { ShopFile } from '@/shared/shop-file/contract';
import { showClockTime } from '@/shared/time/clock-time';
import { showClock } from '@/shared/time/show-day';
import { clockOf } from '@/shared/time/zone';
import type { Clock } from '../clock';
import { shopFileOf } from '../data/snapshot';
import { clearMoves } from '../engine/ahead/clear-moves';
import type { Plan } from '../engine/ahead/plan';
import { planAhead } from '../engine/ahead/plan-ahead';
import { byGravity, type Flag, type RuleName } from '../engine/rules/flag';
import { shopOfFile } from '../engine/shop-of-file';
import { askedShop } from './asked-shop';

/** What a program that is being typed would close, and when it could start instead. */
export type ProgramCheck = {
  /** False as long as what is typed is no program yet. */
  isReadable: boolean;
  /** The first flag of each rule about keeping out, and on how many further days it comes up. */
  flags: { flag: Flag; more: number }[];
  /** Starts that would clear the first day that is closed in opening hours; `at` on that same day, else null. */
  starts: { words: string; at: string | null }[];
};

const NOT_YET: ProgramCheck = { isReadable: false, flags: [], starts: [] };

/** How many weeks are looked at: a program comes back often, and its first turns tell. */
const WEEKS = 8;

const ABOUT_KEEPING_OUT: RuleName[] = ['closed-in-opening-hours', 'bench-closed', 'rei-unknown'];

/** What a program would close as it is typed, by the same rules as once it is saved. Refuses 'not-found'. */
export async function programCheck(
  shopId: string | undefined,
  id: string,
  draft: ProgramDraft,
  clock: Clock,
): Promise<Outcome<ProgramCheck>> {
  const asked = await askedShop(shopId);
  if (!asked.ok) return asked;
  const file = await shopFileOf(asked.value.id);
  const standing = file.programs.find((one) => one.id === id) ?? null;
  const typedAs = standing?.id ?? TYPED;
  const { program, faults } = programOfDraft(typedAs, draft, standing);
  if (faults.length > 0 || !isKnown(file, program)) return accept(NOT_YET);
  // A file with it is read as any other, so that what is no program there is none here.
  const others = file.programs.filter((one) => one.id !== typedAs);
  const read = ShopFile.safeParse({ ...file, programs: [...others, { ...program, changes: standing?.changes ?? [] }] });
  if (!read.success) return accept(NOT_YET);
  const shop = shopOfFile(read.data);
  return accept(checkOf(planAhead(shop, clock.today(shop.zone), WEEKS), typedAs, clock));
}

const isKnown = (file: ShopFile, { recipes, benches }: Pick<ShopFile['programs'][number], 'recipes' | 'benches'>) =>
  recipes.every((id) => file.recipes.some((one) => one.id === id)) &&
  benches.every((id) => file.benches.some((one) => one.id === id));

/** What a new program is called while it is typed. */
const TYPED = 'program-being-typed';

function checkOf(plan: Plan, id: string, clock: Clock): ProgramCheck {
  const own = plan.flags.filter(({ program }) => program === id);
  const flags = ABOUT_KEEPING_OUT.flatMap((rule) => {
    const [first, ...more] = own.filter((flag) => flag.rule === rule);
    return first ? [{ flag: first, more: more.length }] : [];
  });
  const closed = flags.find(({ flag }) => flag.rule === 'closed-in-opening-hours')?.flag;
  const spraying = plan.sprayings.find(({ program, date }) => program.id === id && date === closed?.on);
  return {
    isReadable: true,
    flags: flags.toSorted((a, b) => byGravity(a.flag, b.flag)),
    starts: spraying ? clearMoves(plan.shop, spraying, clock.now()).map((move) => startOf(plan, spraying, move)) : [],
  };
}

function startOf(
  { shop: { zone } }: Plan,
  { date }: Plan['sprayings'][number],
  { why, startsAt }: ReturnType<typeof clearMoves>[number],
): ProgramCheck['starts'][number] {
  const { day, minuteOfDay } = clockOf(zone, startsAt);
  const words = `${showClock(startsAt, zone, date)}${why === 'in-time' ? ', in time for the next opening' : ''}`;
  return { words, at: day === date ? showClockTime(minuteOfDay) : null };
}
