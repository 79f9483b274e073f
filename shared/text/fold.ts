/**
 * A text as it is compared when somebody looks for something: capitals, accents and doubled spaces make no difference,
 * and a letter that is one sign in one hand and two in another is two.
 */
export function fold(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøł]/g, (letter) => TWO_SIGNS[letter] ?? letter)
    .replace(/\s+/g, ' ')
    .trim();
}

const TWO_SIGNS: Record<string, string> = { ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l' };
