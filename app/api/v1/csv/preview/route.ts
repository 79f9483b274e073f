import { doorRoute } from '@/lib/door/door-route';
import { csvPreview } from '@/lib/views/csv-lists';
import { CsvPreviewBody } from '@/shared/api/csv-bodies';
import { NoQuestion } from '@/shared/api/questions';

export const POST = doorRoute({ query: NoQuestion, body: CsvPreviewBody, looks: true, tells: true }, ({ body, tell }) =>
  csvPreview(body, tell),
);
