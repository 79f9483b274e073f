import { memory, PRACTICE, type RuleFrom, read } from './rule-source';

const IUPAC = memory('IUPAC, standard atomic weights, abridged');
const CRC = memory('CRC Handbook of Chemistry and Physics');

const keepOut: RuleFrom[] = [
  {
    title: 'The longest interval counts',
    says: 'The restricted-entry interval of a mix is the longest in it: of 4, 12 and 24 hours in one tank, 24.',
    from: [read('Washington Administrative Code 16-233-116, as 40 CFR 170.407')],
    heldBy: ['worker-safety'],
  },
  {
    title: 'From the end of spraying',
    says: 'It runs from the end of the application, in elapsed hours. A clock change neither shortens nor lengthens it. Minutes are rounded up.',
    from: [memory('40 CFR 170.305'), PRACTICE],
    heldBy: ['worker-safety', 'repeats-and-clocks'],
  },
  {
    title: 'What a signal word would bring',
    says: 'DANGER 48 h, WARNING 24 h, CAUTION 12 h are only used to doubt an interval that was typed. The label’s own stands.',
    from: [read('40 CFR 156.208(c)(2) and 156.64, 2015 edition'), read('EPA policy statement, 60 FR 21965')],
    heldBy: ['worker-safety'],
  },
  {
    title: 'Unknown keeps people out',
    says: 'No end, no interval, an unreadable record, a doubted clock: the bench stays closed until a person says what is so.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-rules'],
  },
];

const mixing: RuleFrom[] = [
  {
    title: 'Order in the tank',
    says: 'Bags, dry flowables and powders, liquid flowables, emulsions and oils, solutions and feeds, wetters.',
    from: [read('Utah State University Extension, Using a Jar Test'), memory('Purdue Extension PPP-122')],
    heldBy: ['tank-mix'],
  },
  {
    title: 'Silicates first, acids last',
    says: 'Alkali silicate goes into plain water before all else, acid last and diluted: silicate gels with acid, calcium or magnesium.',
    from: [PRACTICE],
    heldBy: ['common-practice-of-rules'],
  },
  {
    title: 'Water first',
    says: 'Half to three quarters of the water goes in before the first product. Three products to a tank are plenty.',
    from: [read('Ontario Ministry of Agriculture, Tank Mixing Order and the Jar Test')],
    heldBy: ['tank-mix'],
  },
  {
    title: 'Pairs that harm',
    says: 'Oil and captan 14 days apart; copper apart from living bacteria, sulfur apart from a living fungus.',
    from: [
      read('UC IPM Apple, Fungicide Efficacy: Biocontrols and Natural Products, note 4'),
      read('a Michigan growers’ list, for oil and captan'),
    ],
    heldBy: ['tank-mix'],
  },
];

const amounts: RuleFrom[] = [
  {
    title: 'Units',
    says: 'A US gallon is 231 cubic inches, a pound 453.59237 g, each exact. A teaspoon of powder is a volume until it was weighed.',
    from: [read('NIST Handbook 44, Appendix C'), memory('Weights and Measures Act 1985, for the imperial gallon')],
    heldBy: ['units', 'exact-units', 'spoons-and-weights'],
  },
  {
    title: 'Strength and equal dose',
    says: 'Percent by weight needs the density. Equal strength means the same milligrams of the substance in a litre of spray.',
    from: [
      read('Texas A&M and University of Massachusetts extension tables of dilution'),
      memory('any textbook of chemistry'),
    ],
    heldBy: ['dilution', 'strengths'],
  },
  {
    title: 'Oxides and elements',
    says: 'P is 0.4364 of P2O5, K 0.8301 of K2O, Si 0.4674 of SiO2.',
    from: [IUPAC, read('collected extension extracts on P2O5 and P')],
    heldBy: ['fertiliser'],
  },
  {
    title: 'Spray for a plant',
    says: 'Plants × mL each × cover, or by the ground they stand on, or as measured with water. Fills are as few as fit, and equal.',
    from: [
      read('Michigan State University authors, Spray… Versus Sprench… Versus Drench, 2010'),
      read('Montana State University MT 2000-14 and Kansas State University, sprayer calibration'),
      PRACTICE,
    ],
    heldBy: ['spray-volume', 'calibration', 'common-practice'],
  },
];

const water: RuleFrom[] = [
  {
    title: 'Acid to a pH',
    says: 'Alkalinity now less alkalinity at the target pH, its carbonate held constant. A weak acid gives only what it has given off at that pH.',
    from: [read('USGS, phreeqc.dat'), read('University of Massachusetts and other extension tables of acid'), CRC],
    heldBy: ['acid', 'acid-constants', 'acid-misprints', 'acid-solutions'],
  },
  {
    title: 'Silicic acid',
    says: 'A silicate’s own acid (pK 9.83) holds the pH of the mix down.',
    from: [read('USGS, phreeqc.dat'), read('Sjöberg, Hägglund, Nordin and Ingri, Marine Chemistry 13, 1983')],
    heldBy: ['silicic-acid'],
  },
  {
    title: 'Conductivity',
    says: 'From the ions at 25 °C, corrected for their strength. An estimate: a meter decides.',
    from: [read('Standard KCl solutions, CRC Handbook of Chemistry and Physics'), CRC],
    heldBy: ['conductivity'],
  },
];

const shelf: RuleFrom[] = [
  {
    title: 'First expiring first',
    says: 'Open bottles before shut ones, then whichever dies first.',
    from: [PRACTICE],
    heldBy: ['cost-flow', 'common-practice'],
  },
  {
    title: 'Order by',
    says: 'The day it runs out, less the supplier’s working days, less the shop’s safety days. Weeks until reorder are rounded down.',
    from: [
      memory('Heizer & Render, Operations Management, ch. 12'),
      read('SEC, settlement days, for counting working days'),
    ],
    heldBy: ['working-days'],
  },
];

const money: RuleFrom[] = [
  {
    title: 'What a draw costs',
    says: 'Its share of what was paid for the bottle, so that all draws, waste and what is left add up to the price.',
    from: [read('units-of-production and depletion examples from textbooks of engineering economics'), PRACTICE],
    heldBy: ['cost-flow', 'common-practice'],
  },
  {
    title: 'Sharing freight',
    says: 'By value, by largest remainder, so that the shares add up.',
    from: [read('the largest-remainder method of Hamilton')],
    heldBy: ['cost-flow'],
  },
  {
    title: 'What to buy',
    says: 'Packs and order days of least cost: goods, freight and capital, less what is left and will be used.',
    from: [
      read('Wagner & Whitin, Management Science 5(1), 1958'),
      read('University of Southampton, a lot-sizing exercise'),
      memory('Nahmias, Production and Operations Analysis, ch. 4, for breaks'),
    ],
    heldBy: ['lot-sizing', 'buying-cases', 'buying-sums'],
  },
];

const records: RuleFrom[] = [
  {
    title: 'What a record holds',
    says: 'Product, registration number, active ingredients, crop or site, place, start, end, interval, amount and name.',
    from: [memory('40 CFR 170.311(b)'), read('7 CFR 110.3(a); U.S. Department of Agriculture, Pesticide records')],
    heldBy: ['record-fields', 'record-keeping'],
  },
  {
    title: 'How long it is kept',
    says: 'Two years at least from the day the interval ran out, or as many as the shop sets. The program deletes none.',
    from: [
      read('7 CFR 110.3(c) and 7 U.S.C. 136i-1(a)(1)'),
      memory('40 CFR 170.311(b)(6)'),
      memory('Regulation (EC) 1107/2009, Art. 67(1): three years'),
    ],
    heldBy: ['record-keeping'],
  },
];

/** Everything that is no flag. */
export const OTHER_RULES = { keepOut, mixing, amounts, water, shelf, money, records };
