import { parentPort, workerData } from 'node:worker_threads';
import { jsonPieces } from '@/shared/json/pieces';
import { accept, type Outcome } from '@/shared/outcome';
import { clock } from '../clock';
import { importCsv, preparedCsv } from '../commands/import-csv';
import { importShopFile, prepared, stillReady } from '../commands/import-shop-file';
import { withConfirmation } from '../confirmation';
import { openBeside } from '../data/database';
import { budgetMade } from '../views/budget-seen';
import { csvPreviewOf } from '../views/csv-preview';
import { filePreviewOf } from '../views/import-preview';
import { planPieces } from '../views/plan-written';
import { recordsPieces } from '../views/records-exported';
import { type InPieces, shopFilePieces } from '../views/shop-written';
import { whatIfAnswer } from '../views/what-if';
import { workedOut } from '../views/worked-out';
import type { Asked, Said, Start, Told } from './asked';

/*
 * What runs on a thread of its own, because it would hold up everybody else: it reads the shop from the database on
 * connections of its own, and writes only in the turn that the program gives it.
 */

const { database, room } = workerData as Start;
const say = (said: Said, moved: ArrayBuffer[] = []): void => parentPort?.postMessage(said, moved);
const tell = async (step: object): Promise<void> => say({ step });

let commits = 0;
let giveTurn: () => void = () => {};
const turn = new Promise<void>((resolve) => {
  giveTurn = resolve;
});
const onCommit = () => {
  commits += 1;
};
const opened = openBeside(database, { turn, onCommit });

parentPort?.on('message', (told: Told) => {
  if ('go' in told) giveTurn();
  else void answer(told);
});

async function answer({ asked, confirmation }: Extract<Told, { asked: Asked }>): Promise<void> {
  try {
    await opened;
    const outcome = await withConfirmation(confirmation, () => madeOf(asked));
    if (outcome.ok) send(outcome.value);
    else say({ refused: outcome.refusal });
    say({ end: true, commits });
  } catch (error) {
    say({ thrown: error instanceof Error ? (error.stack ?? error.message) : String(error) });
  }
}

async function madeOf(asked: Asked): Promise<Outcome<InPieces>> {
  if (asked.what === 'plan') return planPieces({ ...asked, clock });
  if (asked.what === 'shop file') return shopFilePieces(asked.shop);
  if (asked.what === 'what if') return asJson(await whatIfAnswer({ ...asked.fields, shop: asked.shop }, clock));
  if (asked.what === 'records') return accept(await recordsPieces(asked, clock));
  if (asked.what === 'budget') return asJson(await workedOut(() => budgetMade(asked.shop, asked.by, clock)));
  if (asked.what === 'file preview') return asJson(await filePreviewOf(asked.into, asked.text));
  if (asked.what === 'list preview') return asJson(await csvPreviewOf(asked.into, asked.asked, tell));
  if (asked.what === 'file import') {
    await tell({ step: 'reading' });
    const ready = await prepared(asked.into, asked.text);
    if (!ready.ok) return ready;
    await myTurn();
    await tell({ step: 'saving' });
    const still = await stillReady(asked.into, ready.value);
    return asJson(await importShopFile({ ...asked, file: still.file, ready: still }, clock));
  }
  await tell({ step: 'together', lines: 0 });
  const ready = await preparedCsv(asked);
  await myTurn();
  return asJson(await importCsv({ ...asked, ready: await preparedCsv(asked, ready) }, clock, (step) => say({ step })));
}

function myTurn(): Promise<void> {
  say({ wantsTurn: true });
  return turn;
}

const asJson = (outcome: Outcome<unknown>): Outcome<InPieces> =>
  outcome.ok ? accept({ pieces: jsonPieces(outcome.value) }) : outcome;

/** Pieces go out as long as there is room on the way, so that an answer never stands in memory twice. */
function send({ pieces, name }: InPieces): void {
  if (name !== undefined) say({ named: name });
  const encoder = new TextEncoder();
  for (const piece of pieces) {
    while (Atomics.load(room, 0) <= 0) Atomics.wait(room, 0, 0);
    Atomics.sub(room, 0, 1);
    const bytes = encoder.encode(piece);
    say({ piece: bytes }, [bytes.buffer]);
  }
}
