import type { Rows } from '@/lib/data/database';
import type { ByWhom } from './invitations';

/**
 * Whether somebody owns every shop that a person has a role in. What is about the person as a whole, such as a password, is
 * theirs to decide alone then.
 */
export async function ownsAllShopsOf(rows: Rows, personId: string, { personId: ownerId }: ByWhom): Promise<boolean> {
  if (ownerId === null) return false;
  const [theirs, owned] = await Promise.all([
    rows.membership.findMany({ where: { personId }, select: { shopId: true } }),
    rows.membership.findMany({ where: { personId: ownerId, role: 'owner' }, select: { shopId: true } }),
  ]);
  return theirs.every(({ shopId }) => owned.some((one) => one.shopId === shopId));
}
