/*
 * The pH of acidified water, worked out another way than the program does: every species by itself from its equilibrium
 * with H⁺, the whole charge balance in mol/L, and its zero by the secant method, written from the equations of the textbooks.
 */

const [K1, K2, KW] = [10 ** -6.352, 10 ** -10.329, 10 ** -13.995];

export type Acid = { constants: number[]; strong: number; mol: number };

/** CO₂, HCO₃⁻ and CO₃²⁻ in mol/L from their total and [H⁺]. */
function carbonates(total: number, h: number) {
  const carbonDioxide = total / (1 + K1 / h + (K1 * K2) / (h * h));
  const bicarbonate = (K1 * carbonDioxide) / h;
  return { bicarbonate, carbonate: (K2 * bicarbonate) / h };
}

function acidCharge({ constants, strong, mol }: Acid, h: number): number {
  let [sum, charge, species] = [1, 0, 1];
  constants.forEach((constant, index) => {
    species *= constant / h;
    sum += species;
    charge += (index + 1) * species;
  });
  return mol * (strong + charge / sum);
}

/** Net charge of everything but the cations that stay, in mol/L. */
function anions(total: number, acids: Acid[], h: number): number {
  const { bicarbonate, carbonate } = carbonates(total, h);
  const acid = acids.reduce((sum, each) => sum + acidCharge(each, h), 0);
  return bicarbonate + 2 * carbonate + KW / h - h + acid;
}

/** Total carbonate of a water, mol/L. */
export function totalCarbonate(mgCaCO3: number, pH: number): number {
  const h = 10 ** -pH;
  const free = mgCaCO3 / 1000 / 50.0435 - KW / h + h;
  return (free * (h * h + K1 * h + K1 * K2)) / (K1 * h + 2 * K1 * K2);
}

/** The pH at which cations (mol of charge per L) and anions balance, by the secant method kept within a bracket. */
export function balancedPh(cations: number, total: number, acids: Acid[]): number {
  const excess = (pH: number) => anions(total, acids, 10 ** -pH) - cations;
  let [a, b] = [0, 14];
  let [fa, fb] = [excess(a), excess(b)];
  for (let step = 0; step < 400 && b - a > 1e-9; step += 1) {
    const secant = a - (fa * (b - a)) / (fb - fa);
    const next = step % 2 === 0 && secant > a && secant < b ? secant : (a + b) / 2;
    const value = excess(next);
    if (value < 0) [a, fa] = [next, value];
    else [b, fb] = [next, value];
  }
  return (a + b) / 2;
}
