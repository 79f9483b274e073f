import { doorRoute } from '@/lib/door/door-route';
import { csvTemplate } from '@/lib/views/csv-lists';
import { TemplateQuestion } from '@/shared/api/csv-bodies';
import { accept } from '@/shared/outcome';

/** A list to begin with. */
export const GET = doorRoute(
  { may: 'open', query: TemplateQuestion, saveAs: (_, { list }) => `${list}-template.csv`, type: 'text/csv' },
  async ({ query }) => accept(csvTemplate(query)),
);
