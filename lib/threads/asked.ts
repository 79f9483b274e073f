import type { ImportCsv } from '@/lib/commands/import-csv';
import type { ImportShopFile } from '@/lib/commands/import-shop-file';
import type { Confirmation } from '@/lib/confirmation';
import type { FlagsSaid } from '@/lib/engine/ahead/plan-document';
import type { BudgetKey } from '@/lib/engine/budget/budget';
import type { CsvAsked } from '@/lib/engine/exchange/csv/asked';
import type { RecordsForm } from '@/lib/views/records-exported';
import type { LogQuery } from '@/shared/forms/log-query';
import type { WhatIfFields } from '@/shared/forms/what-if';
import type { Refusal } from '@/shared/outcome';
import type { Day } from '@/shared/time/day';

/** A shop by its id and its name; null for one that is to be made. */
type Into = { id: string; name: string } | null;

/** What a thread of its own can be asked. It reads the shop from the database itself. */
export type Asked =
  | { what: 'plan'; shop: string; today: Day | null; weeks: number; flags: FlagsSaid }
  | { what: 'shop file'; shop: string }
  | { what: 'file preview'; into: Into; text: string }
  | { what: 'list preview'; into: NonNullable<Into>; asked: CsvAsked }
  | { what: 'what if'; shop: string; fields: WhatIfFields }
  | { what: 'records'; shop: string; query: LogQuery; form: RecordsForm }
  | { what: 'budget'; shop: string; by: BudgetKey }
  | AskedToWrite;

/** What writes. It prepares what it can, asks for its turn in the line of commands, and writes in it. */
export type AskedToWrite =
  | ({ what: 'file import'; text: string } & Omit<ImportShopFile, 'file'>)
  | ({ what: 'list import' } & ImportCsv);

/** What a thread is told: a question, with the second word of its request; and that its turn to write has come. */
export type Told = { asked: Asked; confirmation: Confirmation | null } | { go: true };

/** What it says, in this order: steps; that it waits for its turn; then a refusal, or pieces of the answer; the end. */
export type Said =
  | { step: object }
  | { wantsTurn: true }
  | { refused: Refusal }
  | { named: string }
  | { piece: Uint8Array<ArrayBuffer> }
  | { end: true; commits: number }
  | { thrown: string };

/** What a thread is started with: the database, and how many pieces may still be on their way. */
export type Start = { database: string; room: Int32Array };
