/** A small file that asks for much: daily programs on one bench of so many plants, of so many ingredients. */
export function dailyShop({
  programs,
  plants,
  ingredients = 1,
}: Record<'programs' | 'plants', number> & { ingredients?: number }) {
  const numbers = (count: number) => Array.from({ length: count }, (_, index) => index);
  return {
    format: 'bench-and-bottle/shop@1',
    shop: { name: 'Daily', timeZone: 'America/New_York', currency: 'USD', fillCapacity: '1 L' },
    products: numbers(ingredients).map((id) => ({ id: `p${id}`, name: `P${id}`, kind: 'nutrient', form: 'liquid' })),
    benches: [{ id: 'b', name: 'B', plants: [{ name: 'x', count: plants, mlPerPlant: 10 }] }],
    recipes: [
      { id: 'r', name: 'R', ingredients: numbers(ingredients).map((id) => ({ product: `p${id}`, dose: '1 mL/L' })) },
    ],
    programs: numbers(programs).map((id) => ({
      ...{ id: `g${id}`, recipes: ['r'], benches: ['b'], startsOn: '2026-03-02', repeat: 'FREQ=DAILY' },
      ...{ startTime: '18:00', minutes: 10 },
    })),
  };
}
