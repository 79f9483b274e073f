import { z } from 'zod';
import { FORMAT, ShopFile } from './contract';

/**
 * The contract as JSON Schema (draft 2020-12), as somebody writes a file: what may be left out is not required, and what
 * it then stands for is its default.
 */
export const shopFileSchema = () => ({
  title: `Shop file, ${FORMAT}`,
  ...z.toJSONSchema(ShopFile, {
    io: 'input',
    override: ({ jsonSchema }) => {
      if (!('leftOut' in jsonSchema)) return;
      jsonSchema.default = jsonSchema.leftOut as typeof jsonSchema.default;
      delete jsonSchema.leftOut;
    },
  }),
});
