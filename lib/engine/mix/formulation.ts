/**
 * Where in the order of mixing a product belongs, first to last.
 *
 * Source   the order that extension services teach: dry before liquid, particles before oils, oils before what
 *          dissolves, wetting agents at the end; silicates and acids at the two ends, because they meet badly
 */
export const STAGES = ['silicate', 'bag', 'dry', 'suspension', 'emulsion', 'solution', 'surfactant', 'acid'] as const;
export type Stage = (typeof STAGES)[number];

/** Codes of the international two-letter coding system for formulations, and the older ones that labels still carry. */
const CODES: Partial<Record<Stage, string>> = {
  bag: 'WSB WSP SB WPSB WB',
  dry: 'WP WG WDG DF WT DG EG EP',
  suspension: 'SC F FL SE CS DC ZC ZE ZW',
  emulsion: 'EC E EW EO ME OD OL SO GL OIL',
  solution: 'SL SP SG ST S SN',
};

/** What labels write out in words. The first that fits counts, so the longer ones stand before the shorter. */
const WORDS: [RegExp, Stage][] = [
  [/soluble (bag|pack|pouch|film)/, 'bag'],
  [/wettable|dry flowable|dispersible (granule|tablet)/, 'dry'],
  [/flowable|suspension|suspo/, 'suspension'],
  [/emuls|\boils?\b/, 'emulsion'],
  [/soluble|solution/, 'solution'],
];

const BY_CODE = new Map(
  STAGES.flatMap((stage) => (CODES[stage] ?? '').split(' ').flatMap((code) => (code ? [[code, stage] as const] : []))),
);

/**
 * The place that a formulation has in the order of mixing.
 *
 * Takes   what the label says, as a code or in words, in any case: "EC", "W.P.", "WP-SB", "wettable powder"
 * Gives   null for one that is not known here, or that is not put into water
 */
export function stageOfFormulation(formulation: string): Stage | null {
  const code = formulation.toUpperCase().replace(/[^A-Z]/g, '');
  const first =
    formulation
      .toUpperCase()
      .replaceAll('.', '')
      .split(/[^A-Z]/)[0] ?? '';
  const words = formulation.toLowerCase();
  return BY_CODE.get(code) ?? WORDS.find(([pattern]) => pattern.test(words))?.[1] ?? BY_CODE.get(first) ?? null;
}
