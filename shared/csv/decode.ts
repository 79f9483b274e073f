export type Encoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';

/**
 * The text of a file.
 *
 * Takes    its bytes
 * Gives    the text without a byte order mark, and how it was read: as UTF-16 where a mark says so; as UTF-8 where it can
 *          be; otherwise as Windows-1252, which any bytes can be, so that somebody should look at the letters
 * Source   WHATWG Encoding Standard, index windows-1252
 */
export function decodeText(bytes: Uint8Array): { text: string; encoding: Encoding } {
  const utf16 = bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : null;
  const other = bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : null;
  const marked = utf16 ?? other;
  if (marked) return { text: new TextDecoder(marked).decode(bytes), encoding: 'UTF-16' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), encoding: 'UTF-8' };
  } catch {
    const text = new TextDecoder('windows-1252').decode(bytes);
    return { text: text.replace(/[\u0080-\u009f]/g, inWindows), encoding: 'Windows-1252' };
  }
}

/** What the bytes 80 to 9F stand for in Windows-1252: some decoders leave them as the control characters of Latin-1. */
const FROM_80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

const inWindows = (control: string): string => FROM_80[control.charCodeAt(0) - 0x80] ?? control;
