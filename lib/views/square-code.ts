import QRCode from 'qrcode';

/** A square code as one path of an SVG: a unit is one module, and `side` counts them, without the quiet zone. */
export type SquareCode = { side: number; path: string };

/**
 * A text as a QR code. A sixth of it may be soiled or torn away and it can still be read (level M).
 *
 * Source   ISO/IEC 18004; the quiet zone of four modules around it is the page's to leave
 */
export function squareCode(text: string): SquareCode {
  const { size, data } = QRCode.create(text, { errorCorrectionLevel: 'M' }).modules;
  const rows = Array.from({ length: size }, (_, row) => runsOf(data.subarray(row * size, (row + 1) * size), row));
  return { side: size, path: rows.join('') };
}

/** The dark stretches of a row, each drawn as one bar, so that no seam shows between its modules. */
function runsOf(row: Uint8Array, y: number): string {
  let path = '';
  for (let x = 0; x < row.length; x++) {
    if (!row[x]) continue;
    const from = x;
    while (row[x + 1]) x++;
    path += `M${from} ${y}h${x + 1 - from}v1h${from - x - 1}z`;
  }
  return path;
}
