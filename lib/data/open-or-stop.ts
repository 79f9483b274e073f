import 'server-only';
import { damagedRecords } from './check-records';
import { database } from './database';

/**
 * Open the database and check how it keeps what it is given; or say why it cannot be, and end the process. Records that
 * are not as they were sealed end nothing: whoever asks is told, and every bench is kept out of until somebody has looked.
 */
export async function openOrStop(): Promise<void> {
  try {
    await database();
  } catch (error) {
    console.error(`\n  The shop cannot open. ${error instanceof Error ? error.message : String(error)}\n`);
    process.exit(1);
  }
  try {
    for (const sentence of (await damagedRecords()).values()) console.error(`\n  ${sentence}\n`);
  } catch (error) {
    console.error('\n  The records cannot be checked, so nothing is told from them:', error);
  }
}
