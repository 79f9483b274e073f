import 'server-only';
import { accept, type Outcome, refuse } from '@/shared/outcome';
import { isTooLarge } from '@/shared/quantity/amounts';
import { isTooMuchAhead } from '@/shared/shop-file/limits';

/**
 * Work something out of a shop.
 *
 * Refuses  'faults' where the figures of the shop are too large to be kept exactly, or its programs come to too much:
 *          both come from what was typed in, not from the program
 */
export async function workedOut<T>(work: () => T | Promise<T>): Promise<Outcome<T>> {
  try {
    return accept(await work());
  } catch (error) {
    if (isTooMuchAhead(error))
      return refuse({ code: 'faults', faults: [{ path: 'programs', message: error.message }] });
    if (!isTooLarge(error)) throw error;
    return refuse({ code: 'faults', faults: [{ path: '', message: TOO_LARGE }] });
  }
}

const TOO_LARGE =
  'Some amounts or costs of this shop add up to more than can be kept exactly. Look for a count, a price or a size with a few digits too many.';
