import 'server-only';
import type { Clock } from '@/lib/clock';
import { insertSent } from '@/lib/data/alerts-sent';
import { newCommandId } from '@/lib/data/new-id';
import { write } from '@/lib/data/writer';
import type { AlertWay } from '@/shared/alerts/alert-settings';
import { accept, type Outcome } from '@/shared/outcome';

export type NoteAlertsSent = { shopId: string; way: AlertWay; keys: string[] };

/** Note that alerts were handed over, so that none goes the same way twice. Nobody sends this: the program itself does. */
export async function noteAlertsSent(input: NoteAlertsSent, clock: Clock): Promise<Outcome<{ noted: number }>> {
  const { shopId, way, keys } = input;
  const command = { id: newCommandId(), name: 'noteAlertsSent', shopId, body: { way, keys }, actor: PROGRAM };
  return write(command, clock.now(), async (rows, stamp) => {
    await insertSent(rows, stamp, way, keys);
    return accept({ noted: keys.length });
  });
}

/** Who did what nobody did. */
const PROGRAM = 'this program';
