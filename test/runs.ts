/** True in `npm run test:long`, which gives every property all of its runs. */
export const isLong = process.env.TEST_LONG === '1';

/** How many runs a property gets: `short` in `npm test`, `long` in `npm run test:long`. */
export const runs = (short: number, long: number): number => (isLong ? long : short);
