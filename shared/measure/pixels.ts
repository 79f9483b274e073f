/** A place in a drawing: a tenth of a pixel is finer than any screen shows. */
export const pixels = (value: number): number => Math.round(value * 10) / 10;

/** The path of a drawing: every number in it in tenths of a pixel, since a page draws hundreds of them. */
export const path = (texts: TemplateStringsArray, ...places: readonly number[]): string =>
  texts.map((text, at) => text + (at < places.length ? pixels(places[at] ?? 0) : '')).join('');
