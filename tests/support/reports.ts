/** Bodies of reports for tests. Give only the fields that matter to the test. */

import type { z } from 'zod';
import type { NewReport } from '#contracts/failures.ts';

type Body = z.input<typeof NewReport>;

export const reportBody = (plantId: string, fields: Partial<Body> = {}): Body => ({
  plantId,
  foundOn: '2026-06-10',
  found: 'electrical_test',
  source: 'line',
  quantityFound: 1,
  ...fields,
});
