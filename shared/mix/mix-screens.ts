import type { PlanPour } from './mix-plan';
import type { MixProgress, Pour } from './mix-progress';

/** One screen of a mix. `key` is its name in the progress that is kept. */
export type Screen = { key: string } & (
  | { kind: 'stops' | 'wear' | 'bottles' | 'finish' }
  | { kind: 'water' | 'acid' | 'meter' | 'top' | 'spray'; fill: number }
  | { kind: 'pour'; fill: number; product: string; number: number; of: number }
);

/**
 * The screens of a mix in their order: what to put on, what to take down, then fill by fill water, pours, acid, topping
 * up and spraying, and the end.
 */
export function screensOf(progress: MixProgress): Screen[] {
  const { plan } = progress;
  const fills = Array.from({ length: fillsOf(progress) }, (_, fill) => fillScreens(progress, fill));
  return [
    ...(plan.stops.length > 0 ? [screen('stops')] : []),
    screen('wear'),
    screen('bottles'),
    ...fills.flat(),
    screen('finish'),
  ];
}

/** How many fills there are, or were. */
export const fillsOf = ({ plan, lastFill }: MixProgress): number => (lastFill === null ? plan.fills : lastFill + 1);

/** The screen that a mix is at. */
export function screenAt(progress: MixProgress): Screen {
  const screens = screensOf(progress);
  return screens.find(({ key }) => key === progress.at) ?? screens[0] ?? screen('finish');
}

/** The key of the screen so many steps on; the ends stay where they are. */
export function keyBeside(progress: MixProgress, steps: 1 | -1): string {
  const screens = screensOf(progress);
  const at = screens.findIndex(({ key }) => key === progress.at);
  return screens[at + steps]?.key ?? progress.at;
}

/** The products of a fill in the order in which they go in: those of the sheet, then those that were added. */
export const productsOf = ({ plan, added }: MixProgress): string[] => [
  ...plan.pours.map(({ product }) => product),
  ...added,
];

/** What the sheet says about a product; null for one that was added. */
export const plannedPour = ({ plan }: MixProgress, product: string): PlanPour | null =>
  plan.pours.find((pour) => pour.product === product) ?? null;

/** What is noted of a product in a fill; null when nothing is yet. */
export const pourIn = ({ pours }: MixProgress, fill: number, product: string): Pour | null =>
  pours.find((pour) => pour.fill === fill && pour.product === product) ?? null;

export const pourKey = (fill: number, product: string): string => `pour ${fill} ${product}`;

const screen = (kind: 'stops' | 'wear' | 'bottles' | 'finish'): Screen => ({ key: kind, kind });

function fillScreens(progress: MixProgress, fill: number): Screen[] {
  const { plan } = progress;
  const products = productsOf(progress);
  const of = (kind: 'water' | 'acid' | 'meter' | 'top' | 'spray'): Screen => ({ key: `${kind} ${fill}`, kind, fill });
  return [
    of('water'),
    ...products.map(
      (product, at): Screen => ({
        ...{ key: pourKey(fill, product), kind: 'pour', fill, product },
        ...{ number: at + 1, of: products.length },
      }),
    ),
    ...(plan.acids.length > 0 ? [of('acid')] : []),
    ...(plan.pH ? [of('meter')] : []),
    of('top'),
    of('spray'),
  ];
}
