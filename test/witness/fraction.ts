/* Fractions of whole numbers, written plainly: nothing is ever rounded but where `rounded` says so. */

export type Fraction = { over: bigint; under: bigint };

export const fraction = (over: bigint, under = 1n): Fraction => {
  if (under === 0n) throw new Error('nothing is divided by zero here');
  return under < 0n ? { over: -over, under: -under } : { over, under };
};

/** A number as it is written in decimals: 1.1 is eleven tenths. */
export function decimal(value: number | string): Fraction {
  const [, sign, whole = '0', part = '', power = '0'] =
    /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(String(value)) ?? [];
  if (whole === undefined || sign === undefined) throw new Error(`${value} is no decimal number`);
  const digits = BigInt(`${sign}${whole}${part}`);
  const shift = Number(power) - part.length;
  return shift >= 0 ? fraction(digits * 10n ** BigInt(shift)) : fraction(digits, 10n ** BigInt(-shift));
}

export const plus = (a: Fraction, b: Fraction): Fraction =>
  fraction(a.over * b.under + b.over * a.under, a.under * b.under);
export const minus = (a: Fraction, b: Fraction): Fraction => plus(a, fraction(-b.over, b.under));
export const times = (a: Fraction, b: Fraction): Fraction => fraction(a.over * b.over, a.under * b.under);
export const over = (a: Fraction, b: Fraction): Fraction => fraction(a.over * b.under, a.under * b.over);
export const isLess = (a: Fraction, b: Fraction): boolean => a.over * b.under < b.over * a.under;
export const isEqual = (a: Fraction, b: Fraction): boolean => a.over * b.under === b.over * a.under;

/** The nearest whole number, a half away from zero. */
export function rounded({ over, under }: Fraction): bigint {
  const positive = over < 0n ? -over : over;
  const nearest = (2n * positive + under) / (2n * under);
  return over < 0n ? -nearest : nearest;
}

/** The smallest whole number that is not less. */
export function roundedUp({ over, under }: Fraction): bigint {
  const whole = over / under;
  return whole * under < over ? whole + 1n : whole;
}

export const asNumber = ({ over, under }: Fraction): number => {
  const whole = over / under;
  return Number(whole) + Number(over - whole * under) / Number(under);
};
