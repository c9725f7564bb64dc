/** The one catalogue of failures. Every error answer is an RFC 9457 problem document made here. */
import type { Problem } from '#contracts/shared/problem.ts';

const catalogue = {
  invalid_request: [400, 'The request is not valid'],
  malformed_json: [400, 'The body is not valid JSON'],
  sign_in_required: [401, 'Sign in first'],
  wrong_credentials: [401, 'E-mail or password is wrong'],
  token_invalid: [401, 'The token is not valid'],
  not_allowed: [403, 'Your role does not allow this'],
  password_change_required: [403, 'Choose your own password first'],
  foreign_origin: [403, 'The request came from another site'],
  not_found: [404, 'Not found'],
  already_exists: [409, 'It exists already'],
  conflict: [409, 'It cannot be done in the present state'],
  opinion_first: [409, 'A second opinion comes first'],
  changed_meanwhile: [412, 'Somebody changed it meanwhile'],
  too_large: [413, 'Too large'],
  unsupported_media: [415, 'This kind of content is not accepted'],
  unknown_reference: [422, 'It names something that does not exist'],
  not_consistent: [422, 'The values do not fit together'],
  unreadable_file: [422, 'The file cannot be read'],
  missing_rate: [422, 'A rate is missing'],
  key_reused: [422, 'The Idempotency-Key was used for another request'],
  version_required: [428, 'Say which version you are changing'],
  too_many_requests: [429, 'Too many tries'],
  internal: [500, 'Something went wrong here'],
  busy: [503, 'The service is busy'],
} as const satisfies Record<string, readonly [number, string]>;

export type ProblemCode = keyof typeof catalogue;

export class ProblemError extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.detail);
    this.problem = problem;
  }
}

/** `detail` says what is wrong and what to do; `errors` points into the request, such as `body/quantityFound`. */
export function problem(code: ProblemCode, detail: string, errors?: Problem['errors']): ProblemError {
  const [status, title] = catalogue[code];
  return new ProblemError({
    type: `urn:escape-ledger:problem:${code}`,
    title,
    status,
    detail,
    code,
    ...(errors && { errors }),
  });
}

export const notFound = (what: string): ProblemError =>
  problem('not_found', `There is no such ${what}, or it belongs to a plant that is not yours.`);
export const unknownReference = (path: string, what: string): ProblemError =>
  problem(
    'unknown_reference',
    `There is no such ${what}, or it is retired or belongs to another plant. Choose one from the list.`,
    [{ path: `body/${path}`, message: `no such ${what}` }],
  );
export const changedMeanwhile = (): ProblemError =>
  problem('changed_meanwhile', 'Load the present version, look at what changed, and make your change again.');
