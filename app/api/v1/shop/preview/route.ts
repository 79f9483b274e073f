import { doorRoute } from '@/lib/door/door-route';
import { importPreview } from '@/lib/views/import-preview';
import { ImportPreviewBody } from '@/shared/api/import-bodies';
import { NoQuestion } from '@/shared/api/questions';

export const POST = doorRoute({ query: NoQuestion, body: ImportPreviewBody, looks: true }, ({ body }) =>
  importPreview(body.into, body.text),
);
