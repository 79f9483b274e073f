/** A setting that a shop file leaves out, and what is taken for it. */
export type LeftOut = { path: string; taken: string };

type Raw = Readonly<Record<string, unknown>>;

const isRaw = (value: unknown): value is Raw => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Settings that decide what is bought, and what counts where they are left out. */
const OF_SHOP = {
  safetyDays: '0 days',
  capitalPerYear: '0.10',
  lossPerFill: '0 mL',
  measuringStep: '0 mL',
  dropMl: '0.05 mL',
};

/**
 * The settings that a shop file leaves out and that decide what is bought.
 *
 * Takes    the file as it was written, after it passed `parseShopFile`
 */
export function leftOutIn(written: unknown): LeftOut[] {
  if (!isRaw(written)) return [];
  const shop = isRaw(written.shop) ? written.shop : {};
  const hasSprayers = Array.isArray(shop.sprayers) && shop.sprayers.length > 0;
  const settings = Object.entries(OF_SHOP)
    .filter(([field]) => shop[field] == null)
    .filter(([field]) => !hasSprayers || (field !== 'lossPerFill' && field !== 'measuringStep'));
  return [
    ...settings.map(([field, taken]) => ({ path: `shop.${field}`, taken })),
    ...inEach(written.suppliers, 'suppliers', 'workingDays', 'Monday to Friday'),
    ...inEach(written.benches, 'benches', 'coverage', '1'),
  ];
}

function inEach(list: unknown, name: string, field: string, taken: string): LeftOut[] {
  if (!Array.isArray(list)) return [];
  return list.flatMap((one, index) =>
    isRaw(one) && one[field] == null ? [{ path: `${name}[${index}].${field}`, taken }] : [],
  );
}
