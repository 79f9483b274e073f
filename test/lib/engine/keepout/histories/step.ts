import type { Shop } from '@/lib/engine/shop';
import type { ModelProgram } from './plain-model';

/** One thing that happens in the history of a shop. `pick` chooses among what there is then. */
export type Step =
  | { do: 'wait'; minutes: number }
  /** Wait until so many minutes after the next planned start. */
  | { do: 'until'; by: number }
  /** Every turn that has begun gets its record. */
  | { do: 'tidy' }
  | {
      do: 'spray';
      recipe: string;
      benches: string[];
      minutes: number;
      late: number;
      says: 'turn' | 'extra' | 'nothing' | 'running';
      pick: number;
    }
  | { do: 'end'; pick: number }
  | { do: 'skip'; pick: number; isSure: boolean }
  | { do: 'move'; pick: number; by: number; isSure: boolean }
  | { do: 'zone'; zone: string; isSure: boolean }
  | { do: 'program'; pick: number; to: Omit<ModelProgram, 'id'>; isSure: boolean }
  | { do: 'label'; recipe: string; minutes: number | null; isSure: boolean }
  | {
      do: 'amend';
      pick: number;
      benches: string[] | null;
      start: number;
      end: number;
      withdrawn: boolean;
      isSure: boolean;
    }
  | { do: 'jump'; minutes: number }
  | { do: 'drift'; perMinute: number }
  | { do: 'restart'; minutes: number }
  | { do: 'right' };

/** A shop in which a program sprays something else, elsewhere, or at another time. */
export const withProgram = (shop: Shop, id: string, to: Omit<ModelProgram, 'id'>): Shop => ({
  ...shop,
  programs: shop.programs.map((program) => {
    if (program.id !== id) return program;
    const recipes = shop.recipes.filter((recipe) => recipe.id === to.recipe);
    return {
      ...program,
      recipes,
      startMinute: to.start,
      benches: shop.benches.filter((one) => to.benches.includes(one.id)),
    };
  }),
});
