/** What our forms add to the form library: checks by contract schemas, refusals shown at their fields. */
import type { z } from 'zod';
import { ProblemError } from './http.ts';

type Errors = Record<string, string>;

/** `validate` of a form: the errors of a contract schema by field path. */
export const checkedBy =
  (schema: z.ZodType) =>
  (values: unknown): Errors => {
    const read = schema.safeParse(values);
    if (read.success) return {};
    return Object.fromEntries(read.error.issues.map((issue) => [issue.path.join('.'), issue.message]).reverse());
  };

/** The errors of a refused request by field path: `body/costs/0/amountMinor` belongs to `costs.0.amountMinor`. */
export const refusedFields = (error: unknown): Errors => {
  const errors = error instanceof ProblemError ? (error.problem.errors ?? []) : [];
  return Object.fromEntries(
    errors
      .filter(({ path }) => path.startsWith('body/'))
      .map(({ path, message }) => [path.slice('body/'.length).replaceAll('/', '.'), message]),
  );
};
