import 'server-only';
import { clock } from '@/lib/clock';
import { changeShop, type Expected, type ShopPart } from '@/lib/commands/change-shop';
import type { Sent } from '@/shared/forms/sent-fields';
import { type Fault, type Outcome, refuse } from '@/shared/outcome';

type ThingToSave = {
  sent: Pick<Sent<unknown>, 'commandId' | 'shop' | 'standing'>;
  actor: string;
  part: ShopPart;
  /** Which thing of which list was before the person's eyes. */
  of: Pick<Expected, 'list' | 'id'> | null;
  /** What is wrong already, by field. */
  faults: Fault[];
  /** The field of the form that a path of the part is about. */
  fieldOf: (path: string) => string;
};

/** Save what a form about one thing says, with every fault beside its field. */
export async function saveThing({ sent, actor, part, of, faults, fieldOf }: ThingToSave): Promise<Outcome<unknown>> {
  if (faults.length > 0) return refuse({ code: 'faults', faults });
  const { commandId, shop, standing } = sent;
  const expecting = of ? [{ ...of, fingerprint: standing }] : [];
  const outcome = await changeShop({ commandId, shopId: shop, actor, part, expecting }, clock);
  if (outcome.ok || outcome.refusal.code !== 'faults') return outcome;
  const placed = outcome.refusal.faults.map(({ path, message }) => ({ path: fieldOf(path), message }));
  return refuse({ code: 'faults', faults: placed });
}
