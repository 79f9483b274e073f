import { underWayFrom } from '@/lib/data/under-way';
import { unrecordedSprayings } from '@/lib/engine/ahead/overdue';
import { earlierOpenings } from '@/lib/engine/keepout/earlier-openings';
import { keepOut } from '@/lib/engine/keepout/keep-out';
import { longestRei } from '@/lib/engine/keepout/reopening';
import { apartFrom, keptAsTold } from '@/lib/engine/record/as-told';
import { closedAfterLateEntry } from '@/lib/engine/record/late-entry';
import type { Shop } from '@/lib/engine/shop';
import { shopOfFile } from '@/lib/engine/shop-of-file';
import type { FinishBody } from '@/shared/mix/finish-body';
import type { SprayingTelling } from '@/shared/mix/spraying-told';
import type { ShopFile } from '@/shared/shop-file/contract';
import { parseShopFile } from '@/shared/shop-file/parse';
import { type Instant, instantOf, laterOf, readInstant } from '@/shared/time/instant';
import { parsedOrThrow } from '../../../data/any-shop-file';

/*
 * What the shop decides when devices tell it of sprayings, without a database: the commands' own decisions, in the order
 * in which what is sent comes in.
 */

type Line = Parameters<typeof underWayFrom>[0][number];

const moment = (text: string): Instant => {
  const read = readInstant(text);
  if (!read.ok) throw new Error(read.message);
  return read.value;
};

export class ShopWithDevices {
  private lines: Line[] = [];
  private seen: Shop | null = null;

  constructor(private file: ShopFile) {}

  shop(): Shop {
    const underWay = underWayFrom(this.lines, this.file);
    this.seen ??= shopOfFile(parsedOrThrow({ ...this.file, ...(underWay.length > 0 && { underWay }) }));
    return this.seen;
  }

  /** The benches that the board says are open. */
  open(now: Instant): string[] {
    const shop = this.shop();
    return keepOut(shop, now, unrecordedSprayings(shop, now)).flatMap(({ bench, state }) =>
      state === 'open' ? [bench.id] : [],
    );
  }

  get records(): string[] {
    return this.file.applications.map(({ id }) => id);
  }

  /** Whether what is told opens anything without a word, which it never may. */
  tell({ spraying, recipe: id, benches, planned, startedAt, endedAt }: SprayingTelling, now: Instant): string[] {
    const before = this.shop();
    const recipe = before.recipes.find((one) => one.id === id);
    const rei = recipe ? longestRei(recipe) : null;
    const ended = endedAt ? moment(endedAt) : null;
    const closed = closedAfterLateEntry(before, { benches, endedAt: ended, rei }, now);
    const line = {
      ...{ shopId: 's', sprayingId: spraying, number: this.lines.length + 1, kind: 'going', recipeId: id, benches },
      ...{ programId: planned?.program ?? null, plannedOn: planned?.on ?? null, reiMinutes: rei },
      startedAt: BigInt(Math.min(moment(startedAt), now)),
      endedAt: ended === null ? null : BigInt(ended),
      closedUntil: closed === null ? null : BigInt(closed),
      ...{ sprayedBy: null, passed: [], reason: null, actor: 'Ada', commandId: 'x', recordedAt: BigInt(now) },
    };
    this.lines = [...this.lines, line];
    return this.openedSince(before, now);
  }

  /** Its record. Gives null when it is on record already: then nothing is written twice. */
  finish(body: FinishBody, now: Instant): string[] | null {
    const { commandId, recipe: id, benches, planned } = body;
    if (this.records.includes(commandId)) return null;
    const before = this.shop();
    const { told } = apartFrom(before, commandId);
    const recipe = before.recipes.find((one) => one.id === id);
    const rei = recipe ? longestRei(recipe) : null;
    const late = { benches, endedAt: moment(body.endedAt), rei };
    const closedUntil = laterOf(closedAfterLateEntry(before, late, now), keptAsTold(told, { ...late, now }));
    const record = {
      ...{ id: commandId, recipe: id, benches, startedAt: body.startedAt, endedAt: body.endedAt },
      closedUntil: closedUntil === null ? null : new Date(closedUntil).toISOString(),
    };
    const programs = this.file.programs.map((program) =>
      program.id === planned?.program && program.changes.every(({ on }) => on !== planned.on)
        ? {
            ...program,
            changes: [...program.changes, { on: planned.on, kind: 'done' as const, application: commandId }],
          }
        : program,
    );
    const parsed = parseShopFile(
      JSON.stringify({ ...this.file, programs, applications: [...this.file.applications, record] }),
    );
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.faults));
    this.file = parsed.file;
    return this.openedSince(before, now);
  }

  private openedSince(before: Shop, now: Instant): string[] {
    this.seen = null;
    return earlierOpenings(before, this.shop(), instantOf(now), { atOnce: true }).map(({ bench }) => bench.id);
  }
}
