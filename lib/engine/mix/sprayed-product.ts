/** A product as a record keeps it. */
export type Kept = {
  name: string;
  label: { registration: string | null };
  contents: readonly { substance: string; amount: number; basis: string }[];
};

/**
 * What a record keeps of a product as it is called, registered and made on the day it is sprayed: a label that changes
 * later changes no record.
 *
 * Gives    name; registration number; its active ingredients with their amounts, null when nobody entered any
 */
export function asItIs({ name, contents, label }: Kept) {
  const actives = contents.map(({ substance, amount, basis }) => `${substance} ${amount} ${basis}`).join(', ');
  return { name, registration: label.registration, actives: actives === '' ? null : actives };
}
