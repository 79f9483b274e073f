import { z } from 'zod';
import { plainMoney } from '../measure/money-written';

/** The field in which a form says in which currency its prices are, for the signs that people write beside them. */
const CURRENCY_FIELD = 'currency';

/**
 * A form with prices in it, written as people write them.
 *
 * Takes   the form's contract, which reads plain numbers, and the names of the fields that hold money
 */
export const withMoneyWritten = <S extends z.ZodType>(contract: S, names: RegExp) =>
  z.preprocess((sent) => (isFields(sent) ? plainFields(sent, names) : sent), contract);

const isFields = (sent: unknown): sent is Record<string, unknown> => typeof sent === 'object' && sent !== null;

function plainFields({ [CURRENCY_FIELD]: currency, ...sent }: Record<string, unknown>, names: RegExp) {
  const inCurrency = typeof currency === 'string' && /^[A-Z]{3}$/.test(currency) ? currency : 'XXX';
  const plain = (name: string, value: unknown) =>
    names.test(name) && typeof value === 'string' ? plainMoney(value, inCurrency) : value;
  return Object.fromEntries(Object.entries(sent).map(([name, value]) => [name, plain(name, value)]));
}
