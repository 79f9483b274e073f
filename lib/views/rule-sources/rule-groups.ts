import { FLAG_RULES } from './flag-sources';
import { OTHER_RULES } from './other-sources';
import type { RuleFrom } from './rule-source';

export type RuleGroup = { id: string; title: string; rules: RuleFrom[] };

/** All that this program goes by, in the order of a person's concern: people, plants, the mix, the books, money. */
export const RULE_GROUPS: RuleGroup[] = [
  { id: 'keep-out', title: 'Keeping people out', rules: OTHER_RULES.keepOut },
  { id: 'flags', title: 'Stops and warnings', rules: Object.values(FLAG_RULES) },
  { id: 'mixing', title: 'Mixing', rules: OTHER_RULES.mixing },
  { id: 'amounts', title: 'Amounts and strength', rules: OTHER_RULES.amounts },
  { id: 'water', title: 'Water, acid and salt', rules: OTHER_RULES.water },
  { id: 'shelf', title: 'The shelf', rules: OTHER_RULES.shelf },
  { id: 'money', title: 'Cost and buying', rules: OTHER_RULES.money },
  { id: 'records', title: 'Records', rules: OTHER_RULES.records },
];
