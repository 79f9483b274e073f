import { z } from 'zod';
import { LONGEST_SEARCH } from '../codes/longest-search';
import { shopAsked } from '../forms/command-fields';

/** What `GET /api/v1/search` is asked. */
export const SearchQuestion = z.strictObject({
  q: z
    .string({ error: 'Say what to look for, such as q=oil.' })
    .max(LONGEST_SEARCH, { error: `Look for ${LONGEST_SEARCH} characters at most.` })
    .describe(
      'A name, a substance, a registration, a bar code, a lot, a place, the code of a label, or parts of them.',
    ),
  shop: shopAsked(),
});

const found = z.strictObject({ href: z.string(), name: z.string(), detail: z.string() });

/** What was found, by what it is, the best group first; `more` counts what a group has beside what it shows. */
export const SearchAnswer = z.strictObject({
  q: z.string(),
  groups: z.array(
    z.strictObject({
      of: z.enum(['product', 'bottle', 'bench', 'recipe']),
      found: z.array(found),
      more: z.number().int(),
    }),
  ),
});
export type SearchAnswer = z.output<typeof SearchAnswer>;
export type FoundGroup = SearchAnswer['groups'][number];
