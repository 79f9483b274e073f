import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isLong, runs } from '../../../runs';
import { EVERY_DOCUMENT, type Said, type Told } from './documents';
import { anyKnownShop, forgettable, without } from './forgettable';

/** The same shops in every ordinary run; a long run looks for new ones, and finds gaps that are still open. */
const SEED = isLong ? {} : { seed: 20_261_130 };

/** A shop and one field of it that somebody may not have entered. */
const forgotten = fc
  .tuple(anyKnownShop, fc.nat(10_000))
  .map(([file, pick]) => {
    const fields = forgettable(file);
    const field = fields[pick % Math.max(1, fields.length)];
    const less = field && without(file, field.path);
    return field && less ? { file, less, ...field } : null;
  })
  .filter((one) => one !== null);

const keysOf = ({ said }: Told): Set<string> => new Set(said.map(({ key }) => key));

/** What one document says that another does not. */
const newIn = (more: Told, less: Told) => more.said.filter(({ key }) => !keysOf(less).has(key));

test('forgetting one thing makes no sum smaller without saying what is not known', { timeout: 600_000 }, () => {
  fc.assert(
    fc.property(forgotten, ({ file, less, path, touches }) => {
      for (const told of EVERY_DOCUMENT) {
        const [known, forgot] = [told(file), told(less)];
        const said = newIn(forgot, known);
        for (const [name, { value, part }] of known.sums) {
          const then = forgot.sums.get(name)?.value ?? value;
          if (then >= value || said.some((one) => one.part === null || one.part === part)) continue;
          // What dies in bottles is that of the known part; the product says since when its need is not known.
          if (name === 'wasteCost' && said.some(({ key }) => key.startsWith('since '))) continue;
          // What was not known before and still is says it as well; only a count has to say it anew.
          const isAboutIt = ({ about, part: of }: Said) =>
            of === part || (of === null && about.some((id) => touches.includes(id)));
          if (part !== 'totals' && forgot.said.some(isAboutIt)) continue;
          throw new Error(`${known.document} without ${path}: ${name} was ${value} and is ${then}`);
        }
      }
    }),
    { numRuns: runs(10, 400), ...SEED },
  );
});

test('knowing one thing more takes no warning away from what it does not touch', { timeout: 600_000 }, () => {
  fc.assert(
    fc.property(forgotten, ({ file, less, path, touches }) => {
      for (const told of EVERY_DOCUMENT) {
        const [known, forgot] = [told(file), told(less)];
        const gone = newIn(forgot, known);
        const untouched = gone.filter(({ about }) => !about.some((id) => id === 'any' || touches.includes(id)));
        expect(untouched, `${known.document} with ${path}`).toEqual([]);
      }
    }),
    { numRuns: runs(10, 400), ...SEED },
  );
});
