import type { ShopFile } from '@/shared/shop-file/contract';
import { dayAfter, dayAt, daysBetween, instantAt, minutesOf, weekdayOf } from './calendar';
import { isLess } from './fraction';
import { asWritten, perLitre } from './measures';
import { containersOf, isGone, lastDay } from './shelf';
import { type Bench, found, longestRei, type Product, type Recipe, type Turn } from './sprayings';

/* The flags of the weeks ahead, each from its own sentence in the definitions. */

export type Flag = { severity: 'stop' | 'warn' | 'note'; rule: string; on: string; program: string | null };

/** Something sprayed on a bench, planned or on record. */
type Sprayed = { date: string; startsAt: number; closedUntil: number | null; products: Product[] };

export function flagsOf(file: ShopFile, turns: Turn[], today: string): Flag[] {
  const flags: Flag[] = [...lotFlags(file, today)];
  for (const turn of turns) {
    const raise = (severity: Flag['severity'], rule: string) =>
      flags.push({ severity, rule, on: turn.date, program: turn.program.id });
    for (const line of turn.lines) doseFlag(file, line, raise);
    if (hasForbiddenPair(turn)) raise('stop', 'must-not-mix');
    for (const { product } of turn.lines)
      if (isPhOutside(file, turn.recipe, product)) raise('warn', 'ph-outside-range');
    if (turn.reopensAt === null) raise('stop', 'rei-unknown');
    if (turn.benches.some((bench) => isClosedInOpeningHours(file, turn, bench)))
      raise('warn', 'closed-in-opening-hours');
    for (const bench of turn.benches) benchFlags(file, turns, turn, bench, raise);
  }
  return flags;
}

type Raise = (severity: Flag['severity'], rule: string) => void;

function lotFlags(file: ShopFile, today: string): Flag[] {
  return file.lots.flatMap((lot): Flag[] => {
    const product = found(file.products, lot.product);
    const [one] = containersOf(lot, product, product.shelfLife);
    if (!one || one.left === 0n) return [];
    if (lastDay(one) === null) return [{ severity: 'note', rule: 'unknown-expiry', on: today, program: null }];
    return isGone(today)(one) ? [{ severity: 'warn', rule: 'lot-expired', on: today, program: null }] : [];
  });
}

function doseFlag(file: ShopFile, { product, ingredient }: Turn['lines'][number], raise: Raise): void {
  const { rates } = product.label;
  if (rates.length === 0) return;
  const rate = rates.find(({ use }) => use === ingredient.use);
  if (!rate) {
    raise('warn', 'dose-outside-label');
    return;
  }
  const compared = [rate.min, rate.max].map((end) =>
    end === null ? 0 : compareDoses(file, product, ingredient.dose, end),
  );
  if (compared[1] === 1) raise('stop', 'dose-outside-label');
  else if (compared.includes(null) || compared[0] === -1) raise('warn', 'dose-outside-label');
}

/** -1, 0 or 1 as a dose is less than, equal to or more than another; null when nobody can say, which is no "inside". */
function compareDoses(file: ShopFile, product: Product, a: string, b: string): number | null {
  const { dropMl } = file.shop;
  const [x, y] = [asWritten(a, product, dropMl), asWritten(b, product, dropMl)];
  const [one, other] =
    x.of === y.of ? [x.perLitre, y.perLitre] : [perLitre(a, product, dropMl), perLitre(b, product, dropMl)];
  if (one === null || other === null) return null;
  if (isLess(one, other)) return -1;
  return isLess(other, one) ? 1 : 0;
}

function hasForbiddenPair({ lines }: Turn): boolean {
  const small = (texts: (string | null)[]) =>
    texts.map((text) => (text ?? '').toLowerCase()).filter((text) => text !== '');
  return lines.some(({ product }) =>
    lines.some(({ product: other }) => {
      if (other === product) return false;
      const names = small([
        other.id,
        other.name,
        ...other.contents.map(({ substance }) => substance),
        other.kind,
        other.formulation,
      ]);
      return small(product.label.doNotMixWith).some((entry) => names.includes(entry));
    }),
  );
}

function isPhOutside(file: ShopFile, { targetPh }: Recipe, { label }: Product): boolean {
  if (label.sprayPh === null) return false;
  const pH = targetPh ?? file.shop.water?.pH ?? null;
  return pH === null || pH < label.sprayPh.min || pH > label.sprayPh.max;
}

/** Whether any part of a closed time on a bench that customers reach falls into opening hours. */
function isClosedInOpeningHours(file: ShopFile, { startsAt, reopensAt, date }: Turn, { customers }: Bench): boolean {
  if (!customers) return false;
  if (reopensAt === null) return true;
  if (startsAt === reopensAt) return false;
  const { timeZone, openingHours, specialDays } = file.shop;
  for (let day = dayAfter(date, -1); instantAt(timeZone, day, 0) < reopensAt; day = dayAfter(day, 1)) {
    const special = specialDays.find(({ on }) => on === day);
    const hours = special?.hours ?? openingHours[weekdayOf(day) as 'mon'];
    for (const [from, until] of hours) {
      const opens = instantAt(timeZone, day, minutesOf(from));
      const closes = instantAt(timeZone, day, minutesOf(until));
      if (startsAt < closes && opens < reopensAt) return true;
    }
  }
  return false;
}

/** All that was or will be sprayed on a bench before a turn. */
function before(file: ShopFile, turns: Turn[], turn: Turn, bench: Bench): Sprayed[] {
  const { timeZone } = file.shop;
  const recorded = file.applications
    .filter((record) => !record.withdrawn && record.benches.includes(bench.id))
    .map((record): Sprayed => {
      const recipe = found(file.recipes, record.recipe);
      const rei = longestRei(file, recipe);
      const ended = record.endedAt === null ? null : Date.parse(record.endedAt);
      return {
        startsAt: Date.parse(record.startedAt),
        date: dayAt(timeZone, Date.parse(record.startedAt)),
        closedUntil: ended === null || rei === null ? null : ended + rei,
        products: recipe.ingredients.map(({ product }) => found(file.products, product)),
      };
    });
  const planned = turns.slice(0, turns.indexOf(turn)).filter(({ benches }) => benches.includes(bench));
  return [
    ...recorded.sort((a, b) => a.startsAt - b.startsAt),
    ...planned.map(({ startsAt, date, reopensAt, lines }) => ({
      ...{ startsAt, date, closedUntil: reopensAt },
      products: lines.map(({ product }) => product),
    })),
  ];
}

const DAYS_OF_YEAR = 365;

function benchFlags(file: ShopFile, turns: Turn[], turn: Turn, bench: Bench, raise: Raise): void {
  const earlier = before(file, turns, turn, bench);
  if (earlier.some(({ closedUntil }) => closedUntil === null || closedUntil > turn.startsAt))
    raise('stop', 'bench-closed');
  const products = new Set(turn.lines.map(({ product }) => product));
  for (const product of products) {
    const dates = earlier.filter((one) => one.products.includes(product)).map(({ date }) => date);
    const { maxApplicationsPerYear: most, minDaysBetween: gap } = product.label;
    const inYear = dates.filter((date) => daysBetween(date, turn.date) < DAYS_OF_YEAR).length + 1;
    if (most !== null && inYear > most) raise('stop', 'too-many-applications');
    if (gap !== null && dates.some((date) => daysBetween(date, turn.date) < gap)) raise('stop', 'too-soon');
  }
  for (const group of groupsOf([...products])) {
    const inARow = earlier.map((one) => groupsOf(one.products)).filter((groups) => groups.length > 0);
    const since = inARow.findLastIndex((groups) => groups.every(({ name }) => name !== group.name));
    const most = group.isHighRisk ? 1 : file.shop.sameModeInARow;
    if (!group.neverRepeats && inARow.length - since > most) raise('warn', 'mode-repeated');
  }
}

type Group = { name: string; neverRepeats: boolean; isHighRisk: boolean };

const groupsOf = (products: Product[]): Group[] => {
  const groups = products.flatMap(({ label }) => label.modes.map(groupOf));
  return groups.filter(({ name }, at) => groups.findIndex((one) => one.name === name) === at);
};

/** A mode as its scheme defines it: 4A and 4C are 4, M05 is M5; what is unknown or multi-site never repeats. */
function groupOf(mode: string): Group {
  const [, scheme = '', letter = '', number = ''] = /^(IRAC|FRAC) ?([A-Z]*)0*(\d*)/.exec(mode) ?? [];
  const name = `${scheme} ${letter}${number}`;
  const isVague = ['UN', 'NC', 'M', 'U', 'BM'].includes(letter) || name === 'IRAC 8' || name === 'IRAC 13';
  return { name, neverRepeats: isVague, isHighRisk: ['FRAC 1', 'FRAC 4', 'FRAC 11'].includes(name) };
}
