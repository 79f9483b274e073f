/** Ions that carry current in a spray. */
export type Ion = keyof typeof IONS;

/** How much of each ion there is, mmol/L. */
export type Ions = Partial<Record<Ion, number>>;

type Carrier = { charge: number; perCharge: number };

/**
 * Charge, and limiting molar conductivity at 25 °C for each charge, in S·cm²/mol.
 *
 * Source   P. Vanýsek, "Ionic conductivity and diffusion at infinite dilution", CRC Handbook of Chemistry and Physics,
 *          87th edition; of which the cations were read and the anions are from memory, as is sodium. Hydrogen citrate is
 *          in no table: half way between its neighbours.
 */
export const IONS = {
  H: { charge: 1, perCharge: 349.65 },
  K: { charge: 1, perCharge: 73.48 },
  Na: { charge: 1, perCharge: 50.08 },
  NH4: { charge: 1, perCharge: 73.5 },
  Ca: { charge: 2, perCharge: 59.47 },
  Mg: { charge: 2, perCharge: 53.0 },
  OH: { charge: -1, perCharge: 198 },
  HCO3: { charge: -1, perCharge: 44.5 },
  CO3: { charge: -2, perCharge: 69.3 },
  Cl: { charge: -1, perCharge: 76.31 },
  NO3: { charge: -1, perCharge: 71.42 },
  SO4: { charge: -2, perCharge: 80.0 },
  H2PO4: { charge: -1, perCharge: 36 },
  HPO4: { charge: -2, perCharge: 57 },
  PO4: { charge: -3, perCharge: 92.8 },
  dihydrogenCitrate: { charge: -1, perCharge: 30 },
  hydrogenCitrate: { charge: -2, perCharge: 50 },
  citrate: { charge: -3, perCharge: 70.2 },
  acetate: { charge: -1, perCharge: 40.9 },
  lactate: { charge: -1, perCharge: 38.8 },
} satisfies Record<string, Carrier>;

/** The ions of a mixture with their amounts, the absent ones left out. */
const present = (ions: Ions): { carrier: Carrier; mmol: number }[] =>
  Object.entries(ions).flatMap(([ion, mmol]) => (isIon(ion) && mmol > 0 ? [{ carrier: IONS[ion], mmol }] : []));

const isIon = (name: string): name is Ion => name in IONS;

/** Ions of several sources together. */
export function together(...all: Ions[]): Ions {
  const sum: Ions = {};
  for (const ions of all) {
    for (const [ion, mmol] of Object.entries(ions)) if (isIon(ion)) sum[ion] = (sum[ion] ?? 0) + mmol;
  }
  return sum;
}

/** How much more positive than negative charge some ions carry, meq/L. */
export const netCharge = (ions: Ions): number =>
  present(ions).reduce((sum, { carrier, mmol }) => sum + carrier.charge * mmol, 0);

/**
 * The electrical conductivity of a solution at 25 °C.
 *
 *   Σ over the ions: mmol/L × charge × limiting conductivity × γ^a,   log γ by Davies,
 *   a = 0.6 ÷ √charge, or √ionic strength ÷ charge above an ionic strength of 0.36 × charge
 *
 * Ions that pair up, such as calcium or magnesium with sulfate, are counted as free, so their salts read high.
 *
 * Units    mS/cm
 * Source   C.A.J. Appelo, "Specific conductance: how to calculate, to use, and the pitfalls", hydrochemistry.eu/exmpls/sc.html,
 *          of which the principle was read and the exponent is from memory; C.W. Davies 1962, from memory
 */
export function conductivityOf(ions: Ions): number {
  const carriers = present(ions);
  const strength = carriers.reduce((sum, { carrier, mmol }) => sum + carrier.charge ** 2 * mmol, 0) / 2000;
  return (
    carriers.reduce((sum, { carrier, mmol }) => {
      const charge = Math.abs(carrier.charge);
      return sum + mmol * charge * carrier.perCharge * slowing(charge, strength);
    }, 0) / 1000
  );
}

/** Above this ionic strength, mol/L, the equation of Davies turns round; far stronger than any spray. */
const DAVIES_UP_TO = 0.5;

/** The part of its limiting conductivity that an ion keeps among others. */
function slowing(charge: number, ionicStrength: number): number {
  const strength = Math.min(ionicStrength, DAVIES_UP_TO);
  const root = Math.sqrt(strength);
  const logActivity = -0.509 * charge ** 2 * (root / (1 + root) - 0.3 * strength);
  const exponent = strength <= 0.36 * charge ? 0.6 / Math.sqrt(charge) : root / charge;
  return 10 ** (logActivity * exponent);
}
