import { canRepeat, modeGroupsIn } from '../engine/rotation/mode-group';
import type { Product } from '../engine/shop';

/** The modes of action on a label as they were typed, each with what its scheme says where it does not simply count. */
export const modesInWords = ({ kind, label }: Pick<Product, 'kind' | 'label'>): string[] =>
  label.modes.map((text) => {
    const groups = modeGroupsIn(text, kind);
    if (groups.length === 0) return `${text} (names no group)`;
    if (!groups.some(canRepeat)) return `${text} (never a repeat)`;
    return groups.some(({ standing }) => standing === 'high risk') ? `${text} (high resistance risk)` : text;
  });
