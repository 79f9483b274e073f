import { showNumber, showPh } from '@/shared/measure/show';
import { type AcidStep, acidReadings, acidSteps } from '../mix/acid-steps';
import { alkaliOf } from '../mix/alkali';
import type { AskedMix } from '../mix/asked-mix';
import { groundFor } from '../mix/dry-run';
import { LEAST_FACTOR, MOST_FACTOR } from '../mix/learned-correction';
import { mixStrength } from '../mix/mix-strength';
import type { OwnAcid } from '../mix/own-acid';
import { onGround } from '../mix/spray-ph';
import { PEN } from '../mix/water';
import { sameSubstance } from '../strength/strength-of';
import { mixAddress, volume } from './mix-address';
import { unitOf } from './mix-step-figures';
import { entered, type FoundWorking, type Shown, type Step, text, worked } from './shown';

/**
 * The working of a figure of the chemistry of a mix: `strength/N`, `element/N`, `oxide/N`, `ph`, `ownPh`, `acidNeed`,
 * `acidLeft`, `acid/N`, `acidFirst/N`, `acidPh/N`, `acidLearned/N`, `correction` or `conductivity`.
 */
export function chemistryWorking(mix: AskedMix, [figure, number]: string[]): FoundWorking | null {
  const at = Number(number);
  switch (figure) {
    case 'strength':
    case 'element':
    case 'oxide':
      return strengthWorking(mix, figure, at);
    case 'ph':
      return phWorking(mix);
    case 'ownPh':
      return ownPhWorking(mix);
    case 'acidNeed':
      return needWorking(mix);
    case 'acidLeft':
      return leftWorking(mix);
    case 'acid':
    case 'acidFirst':
    case 'acidPh':
    case 'acidLearned':
      return acidWorking(mix, figure, at);
    case 'correction':
      return correctionWorking(mix);
    case 'conductivity':
      return conductivityWorking(mix);
    default:
      return null;
  }
}

const ratio = (value: number | null, unit: string, because: string): Shown =>
  value === null ? { kind: 'unknown', because } : { kind: 'ratio', value, unit };

const NO_STRENGTH = 'The strength of a product, or the amount of it, is not known.';
const MG_PER_L = 'mg/L';

function strengthWorking(mix: AskedMix, figure: 'strength' | 'element' | 'oxide', at: number): FoundWorking | null {
  const { strength, elements } = mix.sheet.chemistry;
  const [substance, element] = [strength[at], elements[at]];
  if (figure === 'strength') {
    if (!substance) return null;
    return {
      title: `${substance.substance} in the spray`,
      value: ratio(substance.mgPerL, MG_PER_L, NO_STRENGTH),
      rule: 'What a litre of spray takes of each product × how much of the substance is in it, added up.',
      steps: broughtSteps(mix, ({ strength: own }) =>
        own.find((one) => sameSubstance(one.substance, substance.substance)),
      ),
    };
  }
  if (!element) return null;
  const steps = broughtSteps(mix, ({ elements: own }) => own.find((one) => one.element === element.element));
  const asElement = ratio(element.mgPerL, MG_PER_L, NO_STRENGTH);
  if (figure === 'element') {
    const rule = 'What each product brings of it in any form, as the element itself, added up.';
    return { title: `${element.element} in the spray`, value: asElement, rule, steps };
  }
  return element.oxide
    ? {
        title: `${element.element} in the spray, as ${element.oxide.oxide}`,
        value: ratio(element.oxide.mgPerL, MG_PER_L, NO_STRENGTH),
        rule: `The same amount as labels state it: the element ÷ its part of the mass of ${element.oxide.oxide}.`,
        steps: [worked(element.element, asElement, 'the products', mixAddress(mix, 'element', at))],
      }
    : null;
}

type Brought = ReturnType<typeof mixStrength>;

/** What each line of the recipe brings by itself. */
const broughtSteps = (mix: AskedMix, find: (own: Brought) => { mgPerL: number | null } | undefined): Step[] =>
  onGround(mix.recipe.ingredients, groundFor(mix.batch)).flatMap((line) => {
    const found = find(mixStrength([line]));
    if (!found) return [];
    const { product, dose } = line;
    return [entered(`${product.name}, ${dose.text}`, ratio(found.mgPerL, MG_PER_L, NO_STRENGTH), 'its label')];
  });

const waterSteps = ({ shop: { water } }: AskedMix): Step[] => [
  entered('pH of the water', ratio(water?.pH ?? null, '', 'Nobody entered it.'), 'Setup, the water'),
  entered(
    'Alkalinity',
    ratio(water?.alkalinityMgPerLCaCO3 ?? null, 'mg/L as CaCO₃', 'Nobody entered it.'),
    'Setup, the water',
  ),
];

/** The alkali that each silicate brings, and its silica. */
const alkaliSteps = (mix: AskedMix): Step[] =>
  alkaliOf(onGround(mix.recipe.ingredients, groundFor(mix.batch))).flatMap(({ product, meqPerL, silica, missing }) => [
    entered(`Alkali of ${product.name}`, ratio(meqPerL, 'meq/L', missing ?? NO_STRENGTH), '2 eq per mol K₂O or Na₂O'),
    entered(
      `Silica of ${product.name}`,
      ratio(silica, 'mmol/L', 'Enter its SiO2 from the label.'),
      'SiO₂ or Si on its label',
    ),
  ]);

const phShown = (pH: number | null, because: string): Shown =>
  pH === null ? { kind: 'unknown', because } : text(`pH ${showPh(pH)}`);

function phWorking(mix: AskedMix): FoundWorking {
  const { before, message } = mix.sheet.chemistry.pH;
  return {
    title: 'pH before any acid',
    value: phShown(before, message ?? 'The water was never measured.'),
    rule: 'The pH at which the carbonate of the water and the silicic acid of a silicate (pK 9.83) balance its alkalinity, with whatever is alkaline in the mix. An estimate: a meter decides.',
    steps: [...waterSteps(mix), ...alkaliSteps(mix)],
  };
}

function needWorking(mix: AskedMix): FoundWorking {
  const { acidMeqPerL, before, target, message } = mix.sheet.chemistry.pH;
  return {
    title: 'Acid that the target takes',
    value: ratio(acidMeqPerL, 'meq/L', message ?? 'The recipe has no target.'),
    rule: 'Alkalinity of the water with what is alkaline in the mix − the alkalinity that is left at the target pH, its carbonate and its silica held constant.',
    steps: [
      ...waterSteps(mix),
      ...alkaliSteps(mix),
      worked('pH now', phShown(before, message ?? ''), 'water and alkali', mixAddress(mix, 'ph')),
      entered('Target', phShown(target, 'The recipe has none.'), `recipe ${mix.recipe.name}`),
    ],
  };
}

/** What the lines of the recipe that bring an acid pour of it. */
const ownSteps = (mix: AskedMix, { products }: OwnAcid): Step[] =>
  mix.sheet.steps.flatMap(({ ingredient: { product, dose }, line: { amount } }, number) =>
    products.includes(product)
      ? worked(
          product.name,
          ratio(amount && amount / STOCK_PER_UNIT, unitOf(product.form), 'How much of it is not known.'),
          dose.text,
          mixAddress(mix, 'step', number, 'amount'),
        )
      : [],
  );

/** A thousand µL or mg to the mL or g. */
const STOCK_PER_UNIT = 1000;

function ownPhWorking(mix: AskedMix): FoundWorking | null {
  const { own, before, message } = mix.sheet.chemistry.pH;
  if (!own) return null;
  return {
    title: 'pH with the acid that the recipe pours',
    value: phShown(own.pH, own.message),
    rule: 'The pH at which the alkalinity that is left and what the acid has given off add up to the alkalinity of the water. An estimate: a meter decides.',
    steps: [
      worked('Before any acid', phShown(before, message ?? ''), 'water and alkali', mixAddress(mix, 'ph')),
      ...ownSteps(mix, own),
    ],
  };
}

function leftWorking(mix: AskedMix): FoundWorking | null {
  const { own, acidMeqPerL, target, message } = mix.sheet.chemistry.pH;
  if (!own) return null;
  return {
    title: 'Acid that the target takes beside the recipe’s own',
    value: ratio(own.left, 'meq/L', own.message),
    rule: `Acid that the target takes in all − what the recipe’s own has given off at the target. Nothing once its pH is no more than ${showNumber(PEN)} above the target: an acid cannot raise it.`,
    steps: [
      worked(
        'In all',
        ratio(acidMeqPerL, 'meq/L', message ?? 'The recipe has no target.'),
        'water and target',
        mixAddress(mix, 'acidNeed'),
      ),
      ...ownSteps(mix, own),
      worked('pH with these', phShown(own.pH, own.message), 'an estimate', mixAddress(mix, 'ownPh')),
      entered('Target', phShown(target, 'The recipe has none.'), `recipe ${mix.recipe.name}`),
    ],
  };
}

type AcidFigure = 'acid' | 'acidFirst' | 'acidPh' | 'acidLearned';

const ACID_RULES: Record<AcidFigure, string> = {
  acid: 'Acid needed ÷ what a mL or a gram of the product gives off at the target pH × litres of spray. An estimate, never the amount to pour at once: two thirds, stir, measure, then by drops.',
  acidFirst: 'Two thirds of the estimate. Pour it in well diluted, stir, measure, and go on by drops.',
  acidPh: 'The pH that two thirds of the estimate would give. What the meter says is what counts.',
  acidLearned:
    'The estimate of all the acid × what the shop’s own pH readings said about earlier estimates, less the acid that the recipe pours itself.',
};

function acidWorking(mix: AskedMix, figure: AcidFigure, at: number): FoundWorking | null {
  const step = acidSteps(mix.shop, mix.recipe, mix.batch).steps[at];
  if (!step) return null;
  const estimate = worked('Estimate', acidShown(step, step.amount), 'acid needed', mixAddress(mix, 'acid', at));
  const { acidMeqPerL, own } = mix.sheet.chemistry.pH;
  const values: Record<AcidFigure, Shown> = {
    acid: acidShown(step, step.amount),
    acidFirst: acidShown(step, step.first?.amount ?? null),
    acidPh: phShown(step.first?.pH ?? null, step.missing ?? ''),
    acidLearned: acidShown(step, step.corrected),
  };
  const needed: Step[] = [
    own
      ? worked('Still needed', ratio(own.left, 'meq/L', ''), 'beside the recipe’s own', mixAddress(mix, 'acidLeft'))
      : worked('Acid needed', ratio(acidMeqPerL, 'meq/L', ''), 'water and target', mixAddress(mix, 'acidNeed')),
    worked('Spray', volume(mix.batch.spray.total), 'benches and sprayer', mixAddress(mix, 'sprayMl')),
    ...step.product.contents.map(({ substance, amount, basis }) =>
      entered(substance, { kind: 'ratio', value: amount, unit: basis }, `label of ${step.product.name}`),
    ),
  ];
  const learned = worked('Correction', text('learned'), 'the records', mixAddress(mix, 'correction'));
  return {
    title: `${step.product.name} for the target pH`,
    value: values[figure],
    rule: ACID_RULES[figure],
    steps: figure === 'acid' ? needed : figure === 'acidLearned' ? [estimate, learned] : [estimate],
  };
}

const acidShown = ({ product, missing }: AcidStep, amount: number | null): Shown =>
  ratio(amount, unitOf(product.form), missing ?? 'Not known.');

function correctionWorking(mix: AskedMix): FoundWorking | null {
  const { correction } = acidSteps(mix.shop, mix.recipe, mix.batch);
  if (!correction) return null;
  return {
    title: 'What the shop’s own readings say about its acid',
    value: { kind: 'ratio', value: correction.factor, unit: 'times the estimate' },
    rule: `The median of (acid really used ÷ acid estimated), but no less than ${LEAST_FACTOR} and no more than ${MOST_FACTOR}. Beyond that the water is another than the shop believes, and is to be measured again.`,
    steps: [
      entered('Median', { kind: 'ratio', value: correction.median, unit: 'times' }, `${correction.readings} readings`),
      ...acidReadings(mix.shop).map(({ estimated, used }, number) =>
        entered(
          `Reading ${number + 1}`,
          { kind: 'ratio', value: used / estimated, unit: 'times' },
          `${showNumber(used)} used, ${showNumber(estimated)} estimated, in each litre`,
        ),
      ),
    ],
  };
}

function conductivityWorking(mix: AskedMix): FoundWorking {
  const { mSPerCm, atLeast, rests, unknown } = mix.sheet.chemistry.conductivity;
  return {
    title: 'Conductivity of the spray',
    value: ratio(mSPerCm, 'mS/cm', unknown.join(' ')),
    rule: `The ions that water and labels name, each by its own conductivity at 25 °C, corrected for how they hinder each other. ${rests.join(' ')}`,
    steps: [
      entered('Of what is known', { kind: 'ratio', value: atLeast, unit: 'mS/cm' }, 'water and labels'),
      entered('Spray', volume(mix.batch.spray.total), 'benches and sprayer'),
    ],
  };
}
