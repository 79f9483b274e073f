import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { requestFigures } from '@/lib/door/request-counts';
import { shopFigures } from '@/lib/views/health';
import { NoQuestion } from '@/shared/api/questions';
import { OPEN_METRICS, openMetricsText } from '@/shared/metrics/open-metrics';
import { accept } from '@/shared/outcome';

/** Figures of the running program for whatever watches over it. Nothing in them is about a person. */
export const GET = doorRoute(
  { may: 'machine', query: NoQuestion, saveAs: () => 'metrics.txt', type: OPEN_METRICS },
  async () => {
    const { figures, durations } = requestFigures();
    return accept(openMetricsText([...(await shopFigures(clock)), ...figures], durations));
  },
);
