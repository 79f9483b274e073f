import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { RULES } from '@/lib/engine/rules/flag';
import { FLAG_RULES } from '@/lib/views/rule-sources/flag-sources';
import { RULE_GROUPS } from '@/lib/views/rule-sources/rule-groups';

const OUTSIDE = join(import.meta.dirname, '../../outside');
const rules = RULE_GROUPS.flatMap((group) => group.rules);

test('every flag has its source on the page', () => {
  expect(Object.keys(FLAG_RULES).sort()).toEqual([...RULES].sort());
  expect(rules).toEqual(expect.arrayContaining(Object.values(FLAG_RULES)));
});

test('every rule says something once, names a source and is held by a test from outside', () => {
  expect(new Set(rules.map(({ title }) => title)).size).toBe(rules.length);
  for (const { title, says, from, heldBy } of rules) {
    expect([title, says.endsWith('.'), from.length > 0, heldBy.length > 0]).toEqual([title, true, true, true]);
    for (const file of heldBy)
      expect([title, file, existsSync(join(OUTSIDE, `${file}.test.ts`))]).toEqual([title, file, true]);
  }
});

test('every flag is raised by a test of the file that is to hold it', () => {
  for (const [rule, { heldBy }] of Object.entries(FLAG_RULES)) {
    const inCode = rule.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
    const texts = heldBy.map((file) => readFileSync(join(OUTSIDE, `${file}.test.ts`), 'utf8'));
    expect([rule, texts.some((text) => text.includes(rule) || text.includes(inCode))]).toEqual([rule, true]);
  }
});
