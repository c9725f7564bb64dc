import { watchEffects } from './features/actions/effects/watch.job.ts';
import { remindOwners } from './features/actions/reminders.job.ts';
import { escalateClocks } from './features/complaints/escalation.service.ts';
import { prepareReviews } from './features/review/announce.service.ts';
import type { Job } from './platform/jobs/job.ts';
import { sendMail } from './platform/mail/send.ts';

/** What the service does by the clock. */
export const jobs: readonly Job[] = [
  { name: 'send-mail', cron: '* * * * *', run: sendMail },
  { name: 'escalate-clocks', cron: '* * * * *', run: escalateClocks },
  { name: 'watch-effects', cron: '*/5 * * * *', run: watchEffects },
  { name: 'remind-owners', cron: '*/15 * * * *', run: remindOwners },
  { name: 'prepare-reviews', cron: '*/5 * * * *', run: prepareReviews },
];
