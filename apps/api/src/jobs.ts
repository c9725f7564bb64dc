import type { Job } from './platform/jobs/job.ts';
import { sendMail } from './platform/mail/send.ts';

/** What the service does by the clock. */
export const jobs: readonly Job[] = [{ name: 'send-mail', cron: '* * * * *', run: sendMail }];
