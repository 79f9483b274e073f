import type { Micros, Stock } from '@/shared/quantity/amounts';
import { type Instant, instantText } from '@/shared/time/instant';
import { Zone } from '@/shared/time/zone';

/*
 * Stored amounts as a shop file writes them: exact, without a digit more than needed, and the same every time.
 */

/** "12.50", "0.125", "0": two decimals for cents, up to six where there is less than a cent, none for nothing. */
export function plainMoney(micros: Micros): string {
  if (micros === 0) return '0';
  const { whole, decimals } = inThe(micros, 6);
  return `${whole}.${decimals.padEnd(2, '0')}`;
}

/** "354.88 mL" of a liquid, "12.5 g" of a powder. */
export function plainStock(amount: Stock, form: 'liquid' | 'powder'): string {
  const { whole, decimals } = inThe(amount, 3);
  return `${whole}${decimals && `.${decimals}`} ${form === 'liquid' ? 'mL' : 'g'}`;
}

/** "2026-02-24T22:30:00Z", with thousandths only where there are some. */
export const plainInstant = (instant: Instant): string => instantText(instant, UTC).replace('+00:00', 'Z');

const UTC = Zone.parse('UTC');

function inThe(amount: number, places: number): { whole: string; decimals: string } {
  const digits = String(amount).padStart(places + 1, '0');
  return { whole: digits.slice(0, -places), decimals: digits.slice(-places).replace(/0+$/, '') };
}
