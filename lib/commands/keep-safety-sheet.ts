import 'server-only';
import type { Clock } from '@/lib/clock';
import { keepSheet } from '@/lib/data/safety-sheets';
import { sha256 } from '@/lib/data/sha256';
import { productMeasures } from '@/lib/data/shop-facts';
import { write } from '@/lib/data/writer';
import { sheetFault } from '@/shared/forms/safety-sheet';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { heldTo, PIECES } from '@/shared/shop-file/held-to';

export type KeepSafetySheet = {
  commandId: string;
  shopId: string;
  actor?: string;
  product: string;
  /** What the file was called. */
  fileName: string;
  bytes: Uint8Array;
};

/**
 * Keep the safety data sheet of a product. The ones before it stay, and this one counts.
 *
 * Gives    which version of the product's sheet it is, from 1
 * Refuses  'not-found'; 'faults' for what is no PDF, not all there, or larger than 10 MB
 */
export async function keepSafetySheet(input: KeepSafetySheet, clock: Clock): Promise<Outcome<{ number: number }>> {
  const { commandId, shopId, actor, product, fileName, bytes } = input;
  const body = { product, fileName, size: bytes.length, hash: sha256(bytes) };
  return write({ id: commandId, name: 'keepSafetySheet', shopId, body, actor }, clock.now(), async (rows, stamp) => {
    const faults = heldTo(['sheet', PIECES.fileName, fileName]);
    if (faults.length > 0) return refuse({ code: 'faults', faults });
    const message = sheetFault(bytes);
    if (message !== null) return refuse({ code: 'faults', faults: [{ path: 'sheet', message }] });
    if (!(await productMeasures(rows, shopId, product))) {
      return refuse({ code: 'not-found', what: 'product', id: product });
    }
    return accept({ number: await keepSheet(rows, stamp, { product, fileName, bytes }) });
  });
}
