import { showNumber } from '@/shared/measure/show';
import { listed } from '../rules/in-words';
import type { AcidInMix } from './acid-doses';
import { type Acid, acidNamed, shares } from './acids';
import type { AlkaliLine } from './alkali';
import { type Ion, type Ions, netCharge, together } from './ions';
import type { ElementStrength } from './mix-strength';
import { carbonateOf, ionsAt, type Water } from './water';

/** The ions of the water itself and of alkali silicates, at the pH of the spray. */
export function waterIons(water: Water, alkali: readonly AlkaliLine[], pH: number): Ions {
  const carbonate = carbonateOf(water);
  if (carbonate === null) return {};
  return {
    ...ionsAt(carbonate, pH),
    Ca: Math.max(0, carbonate.alkalinity) / 2,
    K: alkali.reduce((sum, { meqPerL }) => sum + (meqPerL ?? 0), 0),
  };
}

/** What each acid leaves behind when it has lost none, one, two or three of its protons. */
const ANIONS: Record<Acid['name'], readonly (Ion | null)[]> = {
  phosphoric: [null, 'H2PO4', 'HPO4', 'PO4'],
  citric: [null, 'dihydrogenCitrate', 'hydrogenCitrate', 'citrate'],
  sulfuric: ['SO4'],
  nitric: ['NO3'],
  hydrochloric: ['Cl'],
  acetic: [null, 'acetate'],
  lactic: [null, 'lactate'],
};

/** The anions of the acids in a mix, at its pH. Those of an unknown amount are left out. */
export const acidIons = (acids: readonly Pick<AcidInMix, 'acid' | 'mmol'>[], pH: number): Ions =>
  together(...acids.map(({ acid, mmol }) => anionsOf(acid, mmol ?? 0, pH)));

function anionsOf(acid: Acid, mmol: number, pH: number): Ions {
  const ions: Ions = {};
  shares(acid, pH).forEach((share, lost) => {
    const anion = ANIONS[acid.name][lost];
    if (anion) ions[anion] = mmol * share;
  });
  return ions;
}

/** Nutrients that are one ion each, with IUPAC molar masses. */
const AS_IONS: { element: string; ion: Ion; molarMass: number }[] = [
  { element: 'K', ion: 'K', molarMass: 39.098 },
  { element: 'Ca', ion: 'Ca', molarMass: 40.078 },
  { element: 'Mg', ion: 'Mg', molarMass: 24.305 },
  { element: 'Na', ion: 'Na', molarMass: 22.99 },
  { element: 'Cl', ion: 'Cl', molarMass: 35.45 },
  { element: 'S', ion: 'SO4', molarMass: 32.06 },
];
const NITROGEN = 14.007;
const PHOSPHORUS = 30.974;

type NutrientIons = { ions: Ions; rests: string[]; unknown: string[] };

/**
 * The ions that the nutrients of a mix are, as labels leave them unsaid.
 *
 * Nitrogen is split so that the charges of all nutrients balance, all of it ammonium at the one end and all of it nitrate
 * at the other: a 20-10-20 comes out at three parts of nitrate to two of ammonium, which is what such a grade is made of.
 * Urea carries no charge, so a feed with much of it reads high.
 */
export function nutrientIons(elements: readonly ElementStrength[], pH: number): NutrientIons {
  const mmol = (element: string, molarMass: number) =>
    (elements.find((one) => one.element === element)?.mgPerL ?? 0) / molarMass;
  const ions: Ions = {};
  for (const { element, ion, molarMass } of AS_IONS) ions[ion] = mmol(element, molarMass);
  const phosphate = acidNamed('H3PO4');
  const phosphates = phosphate ? anionsOf(phosphate.acid, mmol('P', PHOSPHORUS), pH) : {};
  const nitrogen = mmol('N', NITROGEN);
  const nitrate = within(0, (netCharge(together(ions, phosphates)) + nitrogen) / 2, nitrogen);
  const missing = elements.filter(({ element, mgPerL }) => mgPerL === null && isCounted(element));
  return {
    ions: together(ions, phosphates, { NO3: nitrate, NH4: nitrogen - nitrate }),
    rests: nitrogen > 0 ? [nitrogenAs(nitrate / nitrogen)] : [],
    unknown:
      missing.length === 0
        ? []
        : [`How much ${listed(missing.map(({ element }) => element))} is in the spray is not known.`],
  };
}

const isCounted = (element: string): boolean =>
  element === 'N' || element === 'P' || AS_IONS.some((one) => one.element === element);

const within = (least: number, value: number, most: number): number => Math.min(most, Math.max(least, value));

const nitrogenAs = (nitrate: number): string =>
  `Nitrogen is counted as ${showNumber(nitrate * 100)} % nitrate and the rest ammonium, at which the charges balance; urea would carry none.`;
