import { doorRoute } from '@/lib/door/door-route';
import { perPlantAnswer } from '@/lib/views/bench-form';
import { NoQuestion } from '@/shared/api/questions';
import { SprayPerPlantBody } from '@/shared/api/spray-per-plant-body';

/** What one plant takes, from trials or from its leaves. It changes nothing. */
export const POST = doorRoute({ may: 'machine', query: NoQuestion, body: SprayPerPlantBody, looks: true }, ({ body }) =>
  perPlantAnswer(body),
);
