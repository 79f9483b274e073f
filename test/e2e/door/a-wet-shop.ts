const DAY = new Intl.DateTimeFormat('en-CA', { timeZone: 'America/New_York' });
const MINUTE = 60_000;

const product = (id: string, name: string, form: string, more: object) => ({
  ...{ id, name, form, kind: 'other', label: { reiHours: 12, protectiveEquipment: ['gloves'], signalWord: 'CAUTION' } },
  ...more,
});

const lot = (id: string, of: string, pack: string, remaining: string, more: object = {}) => ({
  ...{ id, product: of, pack, remaining, paid: '20.00', receivedOn: '2026-01-05', ...more },
});

/**
 * A shop with one spraying today, that was to begin at midnight: two fills, a first bottle that runs out on the way, an
 * acid, and a bench that is still closed, so that a rule says stop.
 */
export const wetShop = (now: number) => ({
  format: 'bench-and-bottle/shop@1',
  shop: {
    ...{ name: 'Wet Gloves', timeZone: 'America/New_York', currency: 'USD', units: 'us', fillCapacity: '2 gal' },
    water: { alkalinityMgPerLCaCO3: 180, pH: 7.8 },
    measures: [
      { name: 'cylinder', holds: '100 mL', step: '1 mL' },
      { name: 'scale', holds: '200 g', step: '0.1 g' },
    ],
  },
  products: [
    product('oil', 'Light oil', 'liquid', { formulation: 'EC' }),
    product('salt', 'Bittern salt', 'powder', { kind: 'nutrient' }),
    product('sour', 'Sour powder', 'powder', {
      kind: 'pH adjuster',
      contents: [{ substance: 'citric acid', amount: 99, basis: '% w/w' }],
    }),
    product('spreader', 'Spreader', 'liquid', { kind: 'surfactant' }),
  ],
  lots: [
    lot('oil-a', 'oil', '500 mL', '50 mL', { openedOn: '2026-02-01' }),
    lot('oil-b', 'oil', '500 mL', '500 mL', { receivedOn: '2026-02-05' }),
    lot('salt-a', 'salt', '400 g', '400 g'),
    lot('salt-b', 'salt', '400 g', '400 g', { receivedOn: '2026-02-05' }),
    lot('sour-a', 'sour', '200 g', '200 g'),
  ],
  benches: [
    { id: 'ferns', name: 'Fern row', plants: [{ name: 'Ferns', count: 40, mlPerPlant: 300 }] },
    { id: 'spare', name: 'Spare shelf', plants: [{ name: 'Mint', count: 20, mlPerPlant: 30 }] },
  ],
  recipes: [
    {
      ...{ id: 'wash', name: 'Oil wash', targetPh: 6, useWithinHours: 4 },
      ingredients: [
        { product: 'oil', dose: '6 mL/L' },
        { product: 'salt', dose: '2 g/L' },
      ],
    },
  ],
  programs: [
    {
      ...{ id: 'turn', recipes: ['wash'], benches: ['ferns'], startTime: '00:01', minutes: 40 },
      startsOn: DAY.format(now),
    },
  ],
  applications: [
    {
      ...{ id: 'earlier', recipe: 'wash', benches: ['ferns'], extra: true },
      startedAt: new Date(now - 60 * MINUTE).toISOString(),
      endedAt: new Date(now - 30 * MINUTE).toISOString(),
    },
  ],
});
