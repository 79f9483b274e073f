import { z } from 'zod';
import type { Path } from './path';

/** The names of the fields that the contract knows at a place; none where no object belongs. */
export function fieldsAt(contract: z.core.$ZodType, path: Path): string[] {
  let at = bare(contract);
  for (const step of path) {
    if (at instanceof z.ZodArray) at = bare(at.element);
    else if (at instanceof z.ZodObject) at = bare(at.shape[step] ?? z.never());
    else return [];
  }
  return at instanceof z.ZodObject ? Object.keys(at.shape) : [];
}

/** A field without what may stand in its place: null, nothing, a default. */
function bare(field: z.core.$ZodType): z.core.$ZodType {
  if (field instanceof z.ZodPipe) return bare(field.in);
  if (field instanceof z.ZodOptional || field instanceof z.ZodNullable) return bare(field.unwrap());
  return field;
}
