import { expect, test } from 'vitest';
import { demoShop } from '@/lib/demo/demo-shop';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { flagIn } from '@/lib/engine/ahead/plan-document';
import { mixAnswerOf } from '@/lib/engine/mix/mix-answer';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { workingOf } from '@/lib/engine/working/working';
import { type MixScreen, mixAsked, mixSeen } from '@/lib/views/mix-screen';
import type { Pairs } from '@/shared/forms/mix-query';
import { showPh } from '@/shared/measure/show';
import { readVolume } from '@/shared/measure/size';
import { ZERO } from '@/shared/quantity/exact';
import { Day } from '@/shared/time/day';
import { instantOf } from '@/shared/time/instant';

const today = Day.parse('2026-03-03');
const now = instantOf(Date.UTC(2026, 2, 3, 21));
const shop = shopOfFile(demoShop(today));
const ways = { units: shop.units, currency: shop.currency, zone: shop.zone, today };

/** The screen of a mix in the demo shop, on the day that it is loaded. */
function seen(...pairs: Pairs): MixScreen {
  const mix = mixAsked({ shop, now }, pairs);
  if (!mix.ok) throw new Error(mix.message);
  return mixSeen({ id: 'demo', shop, now, today, ways }, mix.value, (lotId, place) => ({ lotId, place }));
}

const refused = (...pairs: Pairs): string => {
  const mix = mixAsked({ shop, now }, pairs);
  return mix.ok ? 'not refused' : mix.message;
};

/** The mix document that `shop mix` prints for the same. */
function printed(recipe: string, volume: string) {
  const ml = readVolume(volume);
  const answer = mixAnswerOf(shop, { recipe, ml: ml.ok ? ml.value : ZERO, area: null }, today);
  if (!answer.ok) throw new Error(answer.refusal.code);
  return answer.value;
}

test('the sheet of one fill says of every recipe what `shop mix` says of the same volume', () => {
  for (const { id } of shop.recipes) {
    const [sheet, document] = [seen(['recipe', id], ['volume', '1.5 gal']), printed(id, '1.5 gal')];
    expect(sheet.fills).toBe(1);
    expect(sheet.sprayMl).toBe(document.ml);
    expect(sheet.steps.map(({ order, product, why }) => ({ order, product: product.id, why }))).toEqual(
      document.steps.map(({ order, product, why }) => ({ order, product, why })),
    );
    for (const [at, step] of document.steps.entries()) {
      const pour = sheet.steps[at];
      expect(pour?.perFillAmount ?? null).toBe(step.amount === null ? null : step.amount * 1000);
      expect(pour?.measured?.with ?? null).toBe(step.measuredWith);
      expect(pour?.measured?.errorPercent ?? null).toBe(step.errorPercent);
    }
    expect(sheet.chemistry.pH).toMatchObject({ before: document.pH.before, target: document.pH.target });
    // What is still to add, where the recipe pours an acid itself.
    const acids = document.pH.own?.acids ?? document.pH.acids;
    expect(sheet.chemistry.acids.map(({ estimate }) => estimate.value)).toMatchObject(
      acids.filter(() => sheet.chemistry.pH.message === null).map(({ amount }) => ({ value: amount })),
    );
    expect(sheet.chemistry.elements.map(({ strength }) => numberIn(strength))).toEqual(
      document.elements.map(({ mgPerL }) => mgPerL),
    );
    expect(sheet.reiMinutes).toBe(document.reiHours === null ? null : document.reiHours * 60);
    expect(sheet.equipment).toEqual(document.protectiveEquipment);
    expect(sheet.cost.materialMicros).toBe(document.cost === null ? null : Math.round(Number(document.cost) * 1e6));
    expect(sheet.flags.map(flagIn)).toEqual(document.flags);
  }
});

const numberIn = ({ value }: { value: { kind: string; value?: unknown } }) =>
  value.kind === 'unknown' ? null : value.value;

test('in several fills a pour is an equal part of what `shop mix` has for the whole', () => {
  const [sheet, document] = [seen(['recipe', 'neem-and-soap'], ['volume', '5 gal']), printed('neem-and-soap', '5 gal')];
  expect(sheet.fills).toBe(3);
  for (const [at, { amount }] of document.steps.entries()) {
    expect((sheet.steps[at]?.perFillAmount ?? 0) * 3).toBeCloseTo((amount ?? 0) * 1000, 6);
    const taken = sheet.steps[at]?.bottles.reduce((sum, { take }) => sum + take, 0) ?? 0;
    expect(taken + (sheet.steps[at]?.short ?? 0)).toBe(sheet.steps[at]?.amount);
  }
});

test('every number on a sheet opens a working of the same value', () => {
  const figures = { plan: planAhead(shop, today, 2), benches: [], now };
  const asked: Pairs[] = [
    [
      ['program', 'weekly-feed'],
      ['on', today],
    ],
    [
      ['recipe', 'thrips-turn'],
      ['plants', 'orchid-bench/0/14'],
    ],
    [
      ['recipe', 'yard-wash'],
      ['volume', '3 gal'],
    ],
  ];
  for (const pairs of asked) {
    const found = figuresIn(seen(...pairs));
    expect(found.length).toBeGreaterThan(25);
    for (const { at, value } of found) expect({ at, value: workingOf(figures, at)?.value }).toEqual({ at, value });
  }
});

type Found = { at: string; value: unknown };

function figuresIn(thing: unknown): Found[] {
  if (typeof thing !== 'object' || thing === null) return [];
  if ('at' in thing && 'value' in thing) return [{ at: String(thing.at), value: thing.value }];
  return Object.values(thing).flatMap(figuresIn);
}

test('just 14 plants take 14 times what one of them takes, and the loss of a fill', () => {
  const sheet = seen(['recipe', 'thrips-turn'], ['plants', 'orchid-bench/0/14'], ['sprayer', '1']);
  const group = shop.benches.find(({ id }) => id === 'orchid-bench')?.plants[0];
  const taken = 14 * (group?.mlPerPlant ?? 0) + 20;
  expect(sheet).toMatchObject({ plants: 14, sprayer: 'hand sprayer', benches: [{ id: 'orchid-bench' }] });
  expect(sheet.sprayMl - taken).toBeGreaterThanOrEqual(0);
  expect(sheet.sprayMl - taken).toBeLessThan(50 * sheet.fills);
  expect(sheet.plantsText).toBe(`14 ${group?.name} on Orchid bench`);
});

test('a planned spraying brings its own recipe, benches and time', () => {
  const sheet = seen(['program', 'weekly-feed'], ['on', today]);
  expect(sheet).toMatchObject({
    recipe: { id: 'calcium-feed' },
    planned: { program: 'weekly-feed', on: today, date: today, became: null },
    benches: [{ id: 'fern-wall' }, { id: 'orchid-bench' }],
  });
});

test('a volume for a planned spraying still goes on its benches', () => {
  const sheet = seen(['program', 'weekly-feed'], ['on', today], ['volume', '1 gal']);
  expect(sheet.benches.map(({ id }) => id)).toEqual(['fern-wall', 'orchid-bench']);
  expect(sheet.sprayMl).toBeCloseTo(3785.41, 2);
});

test('what cannot be mixed is refused in one sentence', () => {
  expect(refused()).toContain('name a recipe');
  expect(refused(['recipe', 'nothing'], ['volume', '1 gal'])).toContain('no recipe "nothing"');
  expect(refused(['recipe', 'thrips-turn'])).toContain('Say what it is for');
  expect(refused(['recipe', 'thrips-turn'], ['volume', 'a lot'])).toContain('a lot');
  expect(refused(['recipe', 'thrips-turn'], ['volume', '0 gal'])).toContain('above nothing');
  expect(refused(['recipe', 'thrips-turn'], ['bench', 'nowhere'])).toContain('no bench "nowhere"');
  expect(refused(['recipe', 'thrips-turn'], ['plants', 'orchid-bench/0/100000'])).toContain('not 100000');
  expect(refused(['recipe', 'thrips-turn'], ['plants', 'orchid-bench/90/1'])).toContain('Count them anew');
  expect(refused(['recipe', 'thrips-turn'], ['volume', '1 gal'], ['sprayer', '9'])).toContain('no such sprayer');
  expect(refused(['program', 'weekly-feed'], ['on', '2026-03-04'])).toContain('sprays nothing');
  expect(refused(['program', 'none'], ['on', today])).toContain('no program');
});

test('an acid that the recipe pours itself is named, and with what is still to add it is what `shop mix` has for the target', () => {
  const { chemistry } = seen(['recipe', 'thrips-turn'], ['volume', '1 gal']);
  const { pH } = printed('thrips-turn', '1 gal');
  expect(chemistry.own?.pours).toMatchObject([
    { name: 'Citric acid powder', amount: { value: { kind: 'ratio', unit: 'g' } } },
  ]);
  expect(chemistry.own?.message).toContain('which is the target');
  expect(chemistry.acids).toEqual([]);
  expect(pH.own).toMatchObject({ products: ['citric-acid'], acidMeqPerL: 0, acids: [] });
  expect(chemistry.own?.pH.value).toEqual({ kind: 'text', text: `pH ${showPh(pH.own?.pH ?? 0)}` });
  expect(seen(['recipe', 'calcium-feed'], ['volume', '1 gal']).chemistry.own).toBeNull();
  expect(printed('calcium-feed', '1 gal').pH.own).toBeUndefined();
});
