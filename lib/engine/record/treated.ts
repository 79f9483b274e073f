import type { Bench as ShopBench } from '../shop';

type Bench = Pick<ShopBench, 'name' | 'place'> & {
  plants: Pick<ShopBench['plants'][number], 'name' | 'pot' | 'count'>[];
};

/** As long as a field of a record may be. */
const LONGEST = 1_000;

/**
 * The plants that were treated, as they stand on the benches now: "Front table: 48 Kumquat (6 in), 36 Calamondin (4 in)".
 *
 * Takes    the benches, and in somebody's words which plants it was, when not all of them
 * Gives    null when no bench has any plants entered and nobody said which
 */
export function treatedPlants(benches: readonly Bench[], only: string | null): string | null {
  const all = benches
    .filter(({ plants }) => plants.length > 0)
    .map(({ name, plants }) => `${name}: ${plants.map(groupText).join(', ')}`)
    .join('; ');
  if (only !== null) return shortened(all === '' ? only : `${only} (of ${all})`);
  return all === '' ? null : shortened(all);
}

const groupText = ({ name, pot, count }: Bench['plants'][number]): string =>
  `${count} ${name}${pot === null ? '' : ` (${pot})`}`;

/**
 * Where that is, and which part of it: the benches with their places, and the shop's address.
 *
 * Gives    null when neither the address nor the place of any bench is known: a bench's name alone leads nobody there
 */
export function treatedPlace(benches: readonly Bench[], address: string | null): string | null {
  if (address === null && benches.every(({ place }) => place === null)) return null;
  const parts = benches.map(({ name, place }) => (place === null ? name : `${name} (${place})`));
  return shortened([parts.join(', '), ...(address === null ? [] : [address])].join('; '));
}

const shortened = (text: string): string => (text.length > LONGEST ? `${text.slice(0, LONGEST - 1).trimEnd()}…` : text);
