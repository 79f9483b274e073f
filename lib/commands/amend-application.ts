import 'server-only';
import { isDeepStrictEqual } from 'node:util';
import type { Clock } from '@/lib/clock';
import { writerOf } from '@/lib/data/application-rows';
import { inForce, keptUntil } from '@/lib/data/in-force';
import { type RecordVersion, versionsIn } from '@/lib/data/record-versions';
import { newestVersions } from '@/lib/data/save-recipes';
import { recordReader, saveRecords } from '@/lib/data/save-records';
import { seeClock } from '@/lib/data/see-clock';
import { shopInWrite } from '@/lib/data/shop-in-write';
import { write } from '@/lib/data/writer';
import { canonical } from '@/lib/engine/exchange/canonical';
import { packOf } from '@/lib/engine/exchange/pack-of';
import { reiOf } from '@/lib/engine/keepout/reopening';
import { AHEAD_MINUTES } from '@/lib/engine/mix/mixed-as';
import { keptClosedUntil } from '@/lib/engine/record/amendment';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import { asTheLabelsSay } from '@/lib/engine/record/sprayed-lines';
import type { Application } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import { accept, type Fault, type Outcome, refuse } from '@/shared/outcome';
import type { ShopFile } from '@/shared/shop-file/contract';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';
import { parseShopFile } from '@/shared/shop-file/parse';
import { addMinutes, type Instant, instantOf, readInstant } from '@/shared/time/instant';

type FileApplication = ShopFile['applications'][number];

/** What an amendment may say anew of a record, as a shop file writes it. What is left out stays. */
export type Amended = Partial<Omit<FileApplication, 'id' | 'closedUntil'>>;

export type AmendApplication = {
  commandId: string;
  shopId: string;
  actor?: string;
  application: string;
  /** The version that the person had before their eyes. Left out: whichever is the newest. */
  seen?: number;
  change: Amended;
  /** Why the record is corrected. It stays beside it. */
  reason: string;
};

/** The version that was written, and until when the record's benches stay closed until it is confirmed; null: it counts at once. */
export type AmendedAs = { version: number; closedUntil: Instant | null };

/**
 * Correct a record of what was sprayed. The old versions stay, and the new one says who, when and why. What opens no
 * bench earlier counts at once; what does, or withdraws the record, keeps the later end until it is confirmed.
 *
 * Refuses  'not-found'; 'changed-meanwhile' when it is no longer the version that was seen; 'faults' for no reason, for
 *          a start or an end that is still to come, and for whatever a shop file would be refused for
 */
export async function amendApplication(input: AmendApplication, clock: Clock): Promise<Outcome<AmendedAs>> {
  const { commandId, shopId, actor, ...body } = input;
  await seeClock(clock.reading());
  const now = clock.now();
  return write<AmendedAs>(
    { id: commandId, name: 'amendApplication', shopId, body, actor },
    now,
    async (rows, stamp) => {
      const { application: id } = input;
      const reason = input.reason.trim();
      if (reason === '') return refuse({ code: 'faults', faults: [{ path: 'reason', message: NO_REASON }] });
      const faults = heldTo(['reason', PIECES.reason, reason]);
      if (faults.length > 0) return refuse({ code: 'faults', faults });
      const [file, versions] = [await shopInWrite(rows, shopId), await versionsIn(rows, shopId, id)];
      const newest = versions.at(-1);
      if (!file || !newest) return refuse({ code: 'not-found', what: 'application', id });
      if (input.seen !== undefined && input.seen !== newest.number) return refuse({ code: 'changed-meanwhile', id });

      const amended = amendedFile(file, newest, input.change, now);
      if (!amended.ok) return amended;
      const before = { ...applicationIn(file, id), ...standing(newest, versions) };
      const after = applicationIn(amended.value, id);
      const closedUntil = keptClosedUntil(before, after) ?? closedAfterLateEnd(file, after, now);
      const number = newest.number + 1;
      const record = recordReader(amended.value)(recordIn(amended.value, id));
      const isSameRecipe = record.recipe === newest.recipe;
      const recipeNumber = isSameRecipe
        ? newest.recipeNumber
        : ((await newestVersions(rows, shopId)).get(record.recipe) ?? 0);
      const details = { ...record.details, closedUntil };
      await saveRecords(rows, stamp, [{ ...record, id, position: 0, number, reason, recipeNumber, details }]);
      return accept({ version: number, closedUntil });
    },
  );
}

const NO_REASON = 'Say why the record is corrected, for example "wrong bench".';

/** An end that is noted where none was, so late that its interval is over already, opens nothing until it is confirmed. */
function closedAfterLateEnd(file: ShopFile, after: Application, now: Instant): Instant | null {
  const benches = after.benches.map(({ id }) => id);
  return closedAfterLateEntry(shopOfFile(file), { benches, endedAt: after.endedAt, rei: reiOf(after) }, now);
}

/** How a record stands with what nobody has confirmed yet: an end that nobody knows is the last moment there is. */
function standing(newest: RecordVersion, versions: readonly RecordVersion[]) {
  const until = keptUntil(versions);
  return {
    endedAt: inForce(versions).endedAt ?? newest.endedAt,
    closedUntil: until === null ? null : instantOf(until),
  };
}

/** The shop with the record as it is to be, in its plain form. */
function amendedFile(file: ShopFile, newest: RecordVersion, change: Amended, now: Instant): Outcome<ShopFile> {
  const at = file.applications.findIndex(({ id }) => id === newest.application);
  const was = writerOf(file.products)(newest);
  // What went in stays as it was recorded, as long as it is a record of the same recipe.
  const isAnother = change.recipe !== undefined && change.recipe !== was.recipe;
  const is = { ...was, ...(isAnother && { products: [] }), ...change, closedUntil: null };
  const applications = file.applications.with(at, is);
  const parsed = parseShopFile(JSON.stringify({ ...file, applications }));
  if (isDeepStrictEqual(is, { ...was, closedUntil: null })) return refuse({ code: 'faults', faults: [NOTHING_NEW] });
  const faults = [...timeFaults(is, now), ...(parsed.ok ? [] : parsed.faults.map((fault) => ofRecord(fault, at)))];
  if (!parsed.ok || faults.length > 0) return refuse({ code: 'faults', faults });
  const unmeasured = amountFaults(is, file.products);
  if (unmeasured.length > 0) return refuse({ code: 'faults', faults: unmeasured });
  const plain = canonical(parsed.file);
  return accept({
    ...plain,
    applications: plain.applications.map((one) => (one.id === is.id ? asTheLabelsSay(one, plain) : one)),
  });
}

/** A fault of the file as one of the record: "applications[3].crop" is about its crop. */
const ofRecord = ({ path, message }: Fault, at: number): Fault => ({
  path: path.replace(`applications[${at}].`, ''),
  message,
});

/** A clock may be a little ahead of this one. */
function timeFaults({ startedAt, endedAt }: Pick<FileApplication, 'startedAt' | 'endedAt'>, now: Instant): Fault[] {
  const latest = addMinutes(now, AHEAD_MINUTES);
  return [
    { path: 'startedAt', text: startedAt },
    { path: 'endedAt', text: endedAt },
  ].flatMap(({ path, text }) => {
    const at = text === null ? null : readInstant(text);
    return at?.ok && at.value > latest ? [{ path, message: TO_COME }] : [];
  });
}

/** A powder by the spoon, or a liquid by weight, is an amount only where the product says what that comes to. */
function amountFaults({ products }: FileApplication, ofShop: ShopFile['products']): Fault[] {
  return products.flatMap(({ product, amount }, at) => {
    const of = ofShop.find(({ id }) => id === product);
    const isKnown = amount === null || !of || packOf(amount, of) !== null;
    return isKnown ? [] : [{ path: `products[${at}].amount`, message: `${of.name}: ${UNMEASURED[of.form]}` }];
  });
}

const UNMEASURED = {
  liquid: 'it is a liquid, and its density is not known. Write a volume, such as "600 mL".',
  powder: 'it is a powder, and what a teaspoon of it weighs is not known. Write a weight, such as "250 g".',
};

const NOTHING_NEW = {
  path: 'reason',
  message: 'Nothing of the record would be different. Change what is wrong in it.',
};
const TO_COME = 'That is still to come. Write when it was.';

const recordIn = ({ applications }: ShopFile, id: string): FileApplication =>
  applications.find((one) => one.id === id) ?? gone(id);

const applicationIn = (file: ShopFile, id: string): Application =>
  shopOfFile(file).applications.find((one) => one.id === id) ?? gone(id);

function gone(id: string): never {
  throw new RangeError(`amendment: record ${id} is not in the shop it came from`);
}
