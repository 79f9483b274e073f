import { clock } from '@/lib/clock';
import { doorRoute } from '@/lib/door/door-route';
import { calendarFeed } from '@/lib/views/calendar-feed';
import { LinkQuestion } from '@/shared/api/questions';

/** The calendar behind a secret link: sprayings, and when people keep out of which bench. */
export const GET = doorRoute(
  { may: 'link', query: LinkQuestion, saveAs: () => 'sprayings.ics', type: 'text/calendar', tagged: true },
  ({ query }) => calendarFeed(query.link, clock),
);
