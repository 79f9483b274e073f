import { doorRoute } from '@/lib/door/door-route';
import { openApi } from '@/shared/api/open-api';
import { NoQuestion } from '@/shared/api/questions';
import { accept } from '@/shared/outcome';

export const GET = doorRoute({ may: 'open', query: NoQuestion }, async () => accept(openApi()));
