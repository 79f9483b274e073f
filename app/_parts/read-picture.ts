import { wholeUpc } from '@/shared/codes/code-meaning';
import { type Reading, read, unreadable } from '@/shared/outcome';

/** Reads the code in a picture; null when none is found in it. */
export type PictureReader = (picture: CanvasImageSource, width: number, height: number) => Promise<string | null>;

/**
 * What reads codes in this browser: the browser itself, where it can, which reads bar codes too; or else square codes
 * alone, by code that only whoever scans has to load.
 */
export async function pictureReader(): Promise<PictureReader> {
  const own = await ownReader();
  return own ?? squareReader(MOST_ACROSS.slice(0, 1));
}

/** Reads the code in a photo, whatever reads it. */
export async function readPhoto(file: Blob): Promise<Reading<string>> {
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return unreadable('This picture could not be opened. Choose one in JPEG or PNG, or type the code.');
  const { width, height } = picture;
  const own = await ownReader();
  const code =
    (await own?.(picture, width, height)) ?? (await (await squareReader(MOST_ACROSS))(picture, width, height));
  picture.close();
  if (code === null) {
    return unreadable(
      'No code was found in this picture. Come closer, hold still, let light fall on the label; or type the code.',
    );
  }
  return read(code);
}

/** Bar codes on packs, and our own labels. */
const FORMATS = ['qr_code', 'ean_13', 'ean_8', 'upc_a', 'upc_e'];

type Found = { rawValue: string; format: string };
type Detector = { detect(picture: CanvasImageSource): Promise<Found[]> };
type DetectorMaker = { new (wanted: { formats: string[] }): Detector; getSupportedFormats(): Promise<string[]> };

async function ownReader(): Promise<PictureReader | null> {
  const Maker: DetectorMaker | undefined = Reflect.get(window, 'BarcodeDetector');
  const known = (await Maker?.getSupportedFormats().catch(() => [])) ?? [];
  const formats = FORMATS.filter((format) => known.includes(format));
  if (!Maker || !formats.includes('qr_code')) return null;
  const detector = new Maker({ formats });
  return async (picture) => {
    const [found] = await detector.detect(picture).catch(() => []);
    if (!found || found.rawValue === '') return null;
    return found.format === 'upc_e' ? wholeUpc(found.rawValue) : found.rawValue;
  };
}

/** Pixels across at which a picture is looked at, in turn: a code that is lost in grain is found when it is smaller. */
const MOST_ACROSS = [900, 1600, 450];

/** Loads what reads square codes where the browser cannot, so that it is there once the network is gone. */
export const readyForPictures = () => import('jsqr');

async function squareReader(sizes: number[]): Promise<PictureReader> {
  const { default: jsQR } = await readyForPictures();
  const canvas = document.createElement('canvas');
  const paper = canvas.getContext('2d', { willReadFrequently: true });
  return async (picture, width, height) => {
    for (const most of sizes) {
      const scale = Math.min(1, most / Math.max(width, height));
      canvas.width = width * scale;
      canvas.height = height * scale;
      paper?.drawImage(picture, 0, 0, canvas.width, canvas.height);
      const pixels = paper?.getImageData(0, 0, canvas.width, canvas.height);
      const found = pixels && jsQR(pixels.data, pixels.width, pixels.height);
      if (found && found.data !== '') return found.data;
    }
    return null;
  };
}
