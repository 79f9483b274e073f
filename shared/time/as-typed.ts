const LONGEST = 40;

/** What somebody typed, in quotation marks, cut short when it is long: for a sentence that refuses it. */
export const asTyped = (text: string): string => (text.length > LONGEST ? `"${text.slice(0, LONGEST)}…"` : `"${text}"`);
