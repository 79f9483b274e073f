import { expect, test } from 'vitest';
import { shopFileSchema } from '@/shared/shop-file/json-schema';

type Schema = {
  type?: string;
  description?: string;
  default?: unknown;
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: boolean;
  items?: Schema | boolean;
  prefixItems?: Schema[];
  anyOf?: Schema[];
};

const schema: Schema = JSON.parse(JSON.stringify(shopFileSchema()));

const inside = (at: Schema): Schema[] => {
  const items = typeof at.items === 'object' ? [at.items] : [];
  const next = [...Object.values(at.properties ?? {}), ...items, ...(at.prefixItems ?? []), ...(at.anyOf ?? [])];
  return [at, ...next.flatMap(inside)];
};

test('every field of the format is described in the published schema, and no other is allowed', () => {
  const objects = inside(schema).filter(({ properties }) => properties);
  expect(objects.length).toBeGreaterThan(15);
  for (const { properties, additionalProperties } of objects) {
    expect(additionalProperties).toBe(false);
    for (const [name, field] of Object.entries(properties ?? {})) {
      expect(field.description, name).toMatch(/\S/);
    }
  }
});

test('only what the contract cannot do without is required, and the rest says what it stands for', () => {
  expect(schema.required).toEqual(['format', 'shop']);
  const shop = schema.properties?.shop;
  expect(shop?.required).toEqual(['name', 'timeZone', 'currency']);
  expect(shop?.properties?.sameModeInARow?.default).toBe(2);
  expect(shop?.properties?.wagePerHour).toHaveProperty('default', null);
  expect(schema.properties?.lots?.default).toEqual([]);
});

test('the schema is plain JSON with nothing of its making left in it', () => {
  expect(JSON.stringify(schema)).not.toContain('leftOut');
});
