import { clock } from '@/lib/clock';
import { keepSafetySheet } from '@/lib/commands/keep-safety-sheet';
import { doorRoute } from '@/lib/door/door-route';
import { sheetAnswer } from '@/lib/views/safety-sheet';
import { SheetBytes, SheetQuestion, SheetUpload } from '@/shared/forms/safety-sheet';

const PDF = 'application/pdf';

/** The safety data sheet of a product, for a browser to show. */
export const GET = doorRoute(
  { may: 'see-shop', query: SheetQuestion, saveAs: (_, { product }) => `safety-data-sheet-${product}.pdf`, type: PDF },
  ({ query }) => sheetAnswer(query),
);

/** Keep a further one. */
export const POST = doorRoute(
  { may: 'grow', query: SheetUpload, body: SheetBytes, takes: PDF },
  ({ query: { commandId, shop: shopId, product, name: fileName }, body: bytes, visitor: { actor } }) =>
    keepSafetySheet({ commandId, shopId, actor, product, fileName, bytes }, clock),
);
