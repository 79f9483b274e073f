import type { Dose } from '@/shared/measure/dose';
import { showNumber } from '@/shared/measure/show';
import { type Reading, read, unreadable } from '@/shared/outcome';
import { divide, type Exact, exact, multiply, toNumber } from '@/shared/quantity/exact';
import type { ShopFile } from '@/shared/shop-file/contract';
import { plain } from '../rules/in-words';
import { wordsFor } from '../rules/must-not-mix';
import type { Content, Product, Shop } from '../shop';
import { strengthOf } from '../strength/strength-of';
import { toEnterForStrength } from './missing-strength';
import { isTooWeak, shareDose, thinnedText, writtenShare } from './thinned-dose';

type FileProduct = ShopFile['products'][number];

/**
 * What a product becomes when it is made up with water: a product of its own, as a shop file has it, without an id.
 *
 *   strength of a content = of the source × its share     rate = rate of the source ÷ its share, in mL of solution
 *
 * What its label asks for is what the label of the source asks for, first aid and storage too. Upper ends of rates are
 * rounded down and lower ends up, so that no solution is ever allowed more than its source; and it names its source, so
 * that what is limited there counts each of its applications.
 *
 * Takes    the shop; the source; how much of it is in each mL of the solution, µL of a liquid or mg of a powder
 * Refuses  a content whose strength is not known, or a rate that cannot be turned into an amount: what to enter first; a
 *          solution so weak that the label's least would be more of it than there is spray
 */
export function stockSolutionOf(shop: Shop, source: FileProduct, share: Exact): Reading<Omit<FileProduct, 'id'>> {
  const product = shop.products.find(({ id }) => id === source.id);
  if (!product) return unreadable(`There is no product "${source.id}" in this shop.`);
  const contents: FileProduct['contents'] = [];
  for (const content of product.contents) {
    const thinned = thinnedContent(content, product, share);
    if (!thinned) return unreadable(toEnterForStrength(product, content.substance));
    contents.push(thinned);
  }
  const rates: FileProduct['label']['rates'] = [];
  const written = writtenShare(share);
  for (const { use, min, max } of product.label.rates) {
    const [least, most] = [
      min && thinnedText(min, product, written, 'up'),
      // Nothing sprayed is stronger than a litre of it in a litre.
      max && (isTooWeak(max, product, written) ? '1000 mL/L' : thinnedText(max, product, written, 'down')),
    ];
    if ((min && !least) || (max && !most)) return unreadable(noRate(product, written, min));
    rates.push({ use, min: least, max: most });
  }
  const doNotMixWith = [...new Set([...source.label.doNotMixWith, ...keptApartFrom(shop, product)])];
  return read({
    ...source,
    name: solutionName(product, share),
    form: 'liquid',
    contents,
    label: { ...source.label, rates, doNotMixWith },
    ...{ densityGPerMl: null, gramsPerTeaspoon: null, gtins: [], archived: false },
    madeFrom: [{ product: source.id, dose: shareDose(product, share) }],
    shelfLife: { unopenedDays: null, openedDays: null },
  });
}

/** "72 g/L" of a powder, "100 mL/L" of a liquid. */
export const shareText = ({ form }: Pick<Product, 'form'>, share: Exact): string =>
  `${showNumber(toNumber(share))} ${form === 'liquid' ? 'mL/L' : 'g/L'}`;

/** What a solution is called, which tells the strengths of one product apart. */
export const solutionName = (product: Pick<Product, 'form' | 'name'>, share: Exact): string =>
  `${product.name} stock solution, ${shareText(product, share)}`;

const THOUSAND = exact(1000n);

function thinnedContent(content: Content, product: Product, share: Exact): Content | null {
  const { substance, amount, basis } = content;
  const part = divide(share, THOUSAND);
  // A share by volume stays one, whatever the density of the substance.
  if (basis === '% v/v') return { substance, basis, amount: toNumber(multiply(exact(amount), part)) };
  const strength = strengthOf(content, product);
  return strength && { substance, basis: 'g/L', amount: toNumber(multiply(multiply(strength, part), THOUSAND)) };
}

/** Products whose own labels keep them apart from the source: they are kept apart from its solution, too. */
function keptApartFrom({ products }: Shop, source: Product): string[] {
  const words = wordsFor(source);
  return products
    .filter(({ label }) => label.doNotMixWith.some((entry) => words.has(plain(entry))))
    .map(({ id }) => id);
}

function noRate(product: Product, share: Exact, min: Dose | null): string {
  if (min && isTooWeak(min, product, share)) {
    return `That is too weak: the label of ${product.name} asks for more of it than there would be in pure solution. Use less water.`;
  }
  return product.form === 'liquid'
    ? `The label of ${product.name} gives a rate by weight. Enter its density in g/mL first.`
    : `The label of ${product.name} gives a rate in spoons. Weigh a level teaspoon and enter its grams first.`;
}
