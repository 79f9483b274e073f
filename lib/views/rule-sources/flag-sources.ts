import type { RuleName } from '../../engine/rules/flag';
import { memory, PRACTICE, type RuleFrom, read } from './rule-source';

const WSU = 'Washington State University Extension, Hortsense: Horticultural spray oil';

/** Each flag, in plain words. A flag without a line here does not compile. */
export const FLAG_RULES: Record<RuleName, RuleFrom> = {
  'dose-outside-label': {
    title: 'Dose outside the label',
    says: 'More than the label’s highest rate for the use is a stop. Less than its lowest is a warning.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-rules'],
  },
  'too-many-applications': {
    title: 'Too many applications',
    says: 'No more than the label allows in the 365 days that end with the spraying, or in one crop cycle.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-rules'],
  },
  'too-soon': {
    title: 'Too soon after the last',
    says: 'The days between two sprayings of a bench are at least those of the label.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-rules'],
  },
  'mode-repeated': {
    title: 'Same mode of action again',
    says: 'A bench gets one mode-of-action group no more often in a row than the shop allows: twice unless it says otherwise, once for a group of high resistance risk. Sub-groups count as their group. Multi-site and unknown groups do not count.',
    from: [
      read(
        'UC IPM, General Properties of Fungicides; Relative Toxicities of Pesticides; Fungicide Efficacy: Biocontrols and Natural Products',
      ),
      read('UF/IFAS EDIS IN1379'),
      memory('IRAC Mode of Action Classification 10 and 11; FRAC Code List 2020 to 2024'),
      PRACTICE,
    ],
    heldBy: ['mode-groups'],
  },
  'must-not-mix': {
    title: 'Must not share a tank',
    says: 'A product is never mixed with what its label, or the shop, says it must not meet.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-flags'],
  },
  'ph-outside-range': {
    title: 'pH outside a product’s range',
    says: 'The pH of the mix lies in the range that each label gives. Where neither target nor water is known, that is said.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-flags'],
  },
  'lot-expired': {
    title: 'Bottle past its last day',
    says: 'A bottle is usable through the earlier of its printed day and, once opened, the day opened plus its opened life.',
    from: [
      read('FAO, Pesticide storage and stock control manual'),
      read('“Is that pesticide too old?”, a trade article'),
      memory('USP <797>, for the same sum'),
    ],
    heldBy: ['shelf-life', 'common-practice-of-flags'],
  },
  'bench-closed': {
    title: 'Sprayed while closed',
    says: 'Nobody starts on a bench before its interval has run out.',
    from: [memory('40 CFR 170.407')],
    heldBy: ['common-practice-of-flags'],
  },
  'closed-in-opening-hours': {
    title: 'Closed while customers are in',
    says: 'A bench that customers reach is not closed during opening hours without a warning, with the nearest start that clears it.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-rules'],
  },
  'rei-unknown': {
    title: 'Interval not entered',
    says: 'Without a restricted-entry interval a bench stays closed until somebody enters one.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-flags', 'common-practice-of-rules'],
  },
  short: {
    title: 'Not enough on the shelf',
    says: 'What usable bottles cannot give on its day is short. Expired stock covers nothing.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-flags'],
  },
  'unknown-cost': {
    title: 'Cost not known',
    says: 'A price, dose or weight that nobody entered makes the cost unknown. It never counts as nothing.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-flags'],
  },
  'unknown-expiry': {
    title: 'Shelf life not known',
    says: 'Published lives run from two years to eight, so none is filled in: the shop is asked.',
    from: [
      read('UF/IFAS Bradford County, Pesticide shelf life'),
      read('Cornell PSEP, Shelf Life of Pesticides'),
      read('a Penn State Extension column on pesticide storage'),
    ],
    heldBy: ['shelf-life'],
  },
  'unknown-need': {
    title: 'Need not known',
    says: 'A week’s need is unknown as soon as one part of it is. The known part stands beside it as “at least”.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-flags', 'common-practice-of-rules'],
  },
  'phi-reaches-harvest': {
    title: 'Too close to harvest or sale',
    says: 'The pre-harvest interval in days has passed before the day of harvest or sale.',
    from: [
      read('Mississippi State University Extension, Follow label directions for garden product use'),
      read('Kansas State University, Pesticides: When Can I Harvest?'),
    ],
    heldBy: ['common-practice-of-rules'],
  },
  'oil-near-sulfur': {
    title: 'Oil and sulfur too close',
    says: 'Published advice runs from 14 to 28 days, and 30 for lime sulfur. The program keeps 30 unless the shop sets its own; the label comes first.',
    from: [read(WSU), read('a product label and a landscaper’s advice, as quoted in print')],
    heldBy: ['oil-and-sulfur'],
  },
  'too-hot': {
    title: 'Too hot for the product',
    says: 'Oils are doubted from 85 °F (29.5 °C), the strictest published figure, unless the label or the shop gives another.',
    from: [read(WSU)],
    heldBy: ['oil-and-sulfur'],
  },
  'mixed-too-long': {
    title: 'Mix too old',
    says: 'A mix is sprayed within its use-within time, to the minute.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-rules'],
  },
  'measured-roughly': {
    title: 'Cannot be measured within 5 %',
    says: 'A reading may be off by half a step of the tool. Where that is over 5 % of the amount, a stock solution or a bigger batch is proposed.',
    from: [read('University of North Carolina, Weighing'), read('Accurate Weighing for Prescriptions')],
    heldBy: ['measuring'],
  },
};
