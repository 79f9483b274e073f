import { clock } from '@/lib/clock';
import { planAhead } from '@/lib/engine/ahead/plan-ahead';
import { type FlagsSaid, planToWrite } from '@/lib/engine/ahead/plan-document';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { keepoutDocument } from '@/lib/engine/keepout/keepout-document';
import { mixAnswerOf } from '@/lib/engine/mix/mix-answer';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { jsonPieces } from '@/shared/json/pieces';
import { readArea } from '@/shared/measure/area';
import { readVolume } from '@/shared/measure/size';
import { type Fault, type Reading, read, unreadable } from '@/shared/outcome';
import { isTooLarge } from '@/shared/quantity/amounts';
import { compare, type Exact, ZERO } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import { shopFileSchema } from '@/shared/shop-file/json-schema';
import { parseShopFile } from '@/shared/shop-file/parse';
import { shown } from '@/shared/shop-file/path';
import { type Instant, readInstant } from '@/shared/time/instant';
import { readArguments, type Usage } from './arguments';
import { BUY_OPTIONS, buy, EQUIVALENTS_OPTIONS, equivalents } from './buying-verbs';
import { type Answer, answerOf, type Options, recipeIn, todayIn, weeksIn } from './options';
import { printed } from './printed';
import { readShopText } from './read-shop-text';

type Verb = Usage & { answer: (file: ShopFile, options: Options, text: string) => Answer | Promise<Answer> };

const MIX_OPTIONS = { '--recipe': 'r1', '--volume': '"2 gal"', '--area': '"130 sq ft"', '--today': '2026-03-02' };

const VERBS: Record<string, Verb> = {
  check: { file: true, options: {}, answer: (file) => ({ ok: true, value: { ok: true, counts: countsOf(file) } }) },
  schema: { file: false, options: {}, answer: () => ({ ok: true, value: shopFileSchema() }) },
  plan: { file: true, options: { '--today': '2026-03-02', '--weeks': '26', '--flags': 'once' }, answer: plan },
  mix: { file: true, options: MIX_OPTIONS, answer: mix },
  keepout: { file: true, options: { '--now': '2026-03-02T09:00:00Z' }, answer: keepout },
  buy: { file: true, options: BUY_OPTIONS, answer: buy },
  equivalents: { file: true, options: EQUIVALENTS_OPTIONS, answer: equivalents },
};

/** The one verb that asks a database and no file: its answer takes reading, so it stands apart. */
const VERIFY = { verify: { file: false, options: { '--database': 'data/shop.db' } } };

/**
 * The `shop` command: one question about a shop file, one JSON document as the answer.
 *
 * Takes   the words after the command's name
 * Gives   the exit code: 0 answered; 2 refused, with every fault as one line of JSON on standard error
 */
export async function shop(words: readonly string[]): Promise<number> {
  const asked = readArguments(words, { ...VERBS, ...VERIFY });
  if (!asked.ok) return refused([{ path: '', message: asked.message }]);
  const { verb, file, options } = asked.value;
  if (verb in VERIFY) return verified(options);
  const answer = VERBS[verb]?.answer;
  if (!answer) throw new RangeError(`shop: ${verb} is known and has no answer`);
  if (file === null) return answered(shopFileSchema());
  const text = await readShopText(file, process.env.INIT_CWD ?? process.cwd());
  if (!text.ok) return refused([{ path: '', message: text.message }]);
  const parsed = parseShopFile(text.value);
  if (!parsed.ok) return refused(parsed.faults);
  const given = await worked(() => answer(parsed.file, options, text.value));
  if (given.ok) return answered(given.value);
  return refused('faults' in given ? given.faults : given.messages.map((message) => ({ path: '', message })));
}

/** Figures so large that they cannot be kept exactly come from the file, not from the program. */
async function worked(answer: () => Answer | Promise<Answer>): Promise<Answer> {
  try {
    return await answer();
  } catch (error) {
    if (!isTooLarge(error)) throw error;
    return { ok: false, messages: [TOO_MUCH] };
  }
}

const TOO_MUCH =
  'Some amounts or costs in this file add up to more than can be kept exactly. Look for a count, a price or a size with a few digits too many.';

/** What is wrong with the records is told twice: in the document, and as every verb tells faults. */
async function verified(options: Options): Promise<number> {
  const { verify } = await import('./verify');
  const { document, faults } = await verify(options.get('--database'), process.env.INIT_CWD ?? process.cwd());
  if (document) await answered(document);
  return faults.length > 0 ? refused(faults) : 0;
}

async function answered(document: unknown): Promise<number> {
  await printed(process.stdout, jsonPieces(document));
  await printed(process.stdout, ['\n']);
  return 0;
}

async function refused(faults: Fault[]): Promise<number> {
  await printed(
    process.stderr,
    faults.map((fault) => `${JSON.stringify(fault)}\n`),
  );
  return 2;
}

function countsOf({ format: _, shop: __, ...lists }: ShopFile): Record<string, number> {
  return Object.fromEntries(Object.entries(lists).map(([name, list]) => [name, list.length]));
}

function plan(file: ShopFile, options: Options): Answer {
  const ours = shopOfFile(file);
  const today = todayIn(ours, options.get('--today'));
  const weeks = weeksIn(options.get('--weeks') ?? '26');
  const flags = flagsIn(options.get('--flags') ?? 'daily');
  if (!today.ok || !weeks.ok || !flags.ok)
    return { ok: false, messages: [today, weeks, flags].flatMap((each) => (each.ok ? [] : each.message)) };
  return { ok: true, value: planToWrite(planAhead(ours, today.value, weeks.value), flags.value) };
}

const flagsIn = (text: string): Reading<FlagsSaid> =>
  text === 'daily' || text === 'once' ? read(text) : unreadable('--flags: Write daily or once.');

function mix(file: ShopFile, options: Options): Answer {
  const ours = shopOfFile(file);
  const today = todayIn(ours, options.get('--today'));
  const recipe = recipeIn(ours, options.get('--recipe'));
  const volume = volumeIn(options.get('--volume'));
  const area = areaIn(options.get('--area'));
  if (!today.ok || !recipe.ok || !volume.ok || !area.ok)
    return { ok: false, messages: [recipe, volume, area, today].flatMap((each) => (each.ok ? [] : each.message)) };
  const outcome = mixAnswerOf(ours, { recipe: recipe.value, ml: volume.value, area: area.value }, today.value);
  return outcome.ok ? outcome : answerOf(outcome.refusal);
}

function volumeIn(text: string | undefined): Reading<Exact> {
  if (text === undefined) return unreadable('--volume: Say how much is mixed, such as --volume "2 gal".');
  const volume = readVolume(text);
  if (!volume.ok) return unreadable(`--volume: ${volume.message}`);
  if (compare(volume.value, ZERO) > 0) return volume;
  return unreadable(`--volume: ${shown(text)} is no spray at all. Write a volume above nothing, such as "2 gal".`);
}

function areaIn(text: string | undefined): Reading<Exact | null> {
  if (text === undefined) return read(null);
  const area = readArea(text);
  return area.ok ? area : unreadable(`--area: ${area.message}`);
}

function keepout(file: ShopFile, options: Options): Answer {
  const ours = shopOfFile(file);
  const text = options.get('--now');
  const now: Reading<Instant> = text === undefined ? read(clock.now()) : readInstant(text);
  if (!now.ok) return { ok: false, messages: [`--now: ${now.message}`] };
  return { ok: true, value: keepoutDocument(now.value, keepOut(ours, now.value), ours.zone) };
}
