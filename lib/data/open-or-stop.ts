import 'server-only';
import { faultSentence } from '@/lib/engine/record/chain';
import { noteRestored } from './clock-mark';
import { type Database, database } from './database';
import { fileTrouble } from './file-trouble';
import { checkWhole, findingsOf } from './found-damage';
import { forgetWhoIsIn } from './save-people';
import type { WholeCheck } from './whole-check';
import { inTurn } from './writer';

/**
 * Open the database, check how it keeps what it is given and all that it holds, and take it over; or say why that cannot
 * be, and end the process. Records and rows that are not as they were written end nothing: whoever asks is told, and the
 * benches are kept out of until somebody has looked. From then on all of it is checked once a day.
 */
export async function openOrStop(): Promise<void> {
  try {
    const opened = await database();
    await checkAndTell(opened);
    await inTurn(takeOver).catch(tellNotWritable);
  } catch (error) {
    const trouble = fileTrouble(error)?.message ?? (error as Error).message;
    console.error(`\n  The shop cannot open. ${trouble}\n`);
    process.exit(1);
  }
  const daily = () => database().then(checkAndTell).catch(tellUnchecked);
  setInterval(daily, A_DAY).unref();
}

/** That a backup was put back is in the rows before the mark says that this is the database. */
async function takeOver({ keeper, writer }: Database): Promise<void> {
  if (keeper.isRestored()) {
    await writer.$transaction(async (rows) => {
      await noteRestored(rows);
      await forgetWhoIsIn(rows);
    });
  }
  await keeper.takeOver();
}

const [A_DAY, A_LARGE_FILE, A_MEGABYTE] = [86_400_000, 50n * 1_048_576n, 1_048_576n];

async function checkAndTell(opened: Database): Promise<void> {
  const { size } = opened.watch.signs().main;
  if (size > A_LARGE_FILE) console.log(`  Checking all of the database (${size / A_MEGABYTE} MB) …`);
  for (const sentence of sentencesOf(await checkWhole(opened))) console.error(`\n  ${sentence}\n`);
}

const MOST_SENTENCES = 20;

/** What was found, in words, each naming its record or its table and row. */
function sentencesOf(found: WholeCheck): string[] {
  const records = found.records.flatMap(([, faults]) => faults.map(faultSentence));
  const sentences = [...findingsOf(found).map(({ message }) => message), ...records];
  const more = sentences.length - MOST_SENTENCES;
  return more > 0 ? [...sentences.slice(0, MOST_SENTENCES), `${more} more faults were found.`] : sentences;
}

/** A damaged file is served for reading, with every bench kept out of; a file that cannot be written is no shop. */
function tellNotWritable(error: unknown): void {
  const trouble = fileTrouble(error);
  if (trouble?.why !== 'damaged') throw error;
  console.error(`\n  ${trouble.message}\n`);
}

const tellUnchecked = (error: unknown): void => console.error('The database could not be checked:', error);
